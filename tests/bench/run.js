// Prints what each bench did and, at the end, one table of what is promised about speed: ratio, goal, verdict.
// Exit code 1 where a goal is missed.
// Usage: node tests/bench/run.js [PART_OF_A_FILE_NAME…], after `npm run build`.
const BENCHES = [
  "channel-process",
  "plan-process",
  "spectral-overlap",
  "rank-channels",
  "place-transmitters",
  "assign-channels",
  "beacon-csv",
  "sweep-survey",
  "sweep-memory",
];

const wanted = process.argv.slice(2);
const names = BENCHES.filter((name) => wanted.length === 0 || wanted.some((part) => name.includes(part)));
if (names.length === 0) throw new Error(`no bench of that name; there are ${BENCHES.join(", ")}`);

console.log(`Node ${process.version} on ${process.platform} ${process.arch}`);
const rows = [];
for (const name of names) {
  const { run } = await import(`./${name}.js`);
  try {
    rows.push(run());
  } catch (error) {
    rows.push({ name, own: "failed", reference: "", ratio: NaN, goal: "", met: false, note: error.message });
  }
  const { name: title, note } = rows.at(-1);
  console.log(`${title}: ${note}`);
}

const table = [
  ["name", "this", "reference", "ratio", "goal", "verdict"],
  ...rows.map((row) => [
    row.name,
    row.own,
    row.reference,
    row.ratio.toFixed(row.ratio < 10 ? 3 : 0),
    row.goal,
    row.met ? "met" : "MISSED",
  ]),
];
const widths = table[0].map((_, column) => Math.max(...table.map((cells) => cells[column].length)));
console.log("");
for (const cells of table)
  console.log(
    cells
      .map((cell, column) => cell.padEnd(widths[column]))
      .join("  ")
      .trimEnd(),
  );
if (rows.some(({ met }) => !met)) process.exitCode = 1;
