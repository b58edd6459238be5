// Writes the golden files of the command line again: builds, runs every case of fixtures/golden/cases.json,
// and tells what changed.
// Usage: node tests/tools/update-golden.js [--no-build] [FILE...]   (default: every file)
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { buildProject } from "./build.js";

const PROJECT = resolve(import.meta.dirname, "../..");
const GOLDEN = join(PROJECT, "fixtures/golden");

const words = process.argv.slice(2);
const named = words.filter((word) => !word.startsWith("--"));
if (!words.includes("--no-build")) await buildProject(PROJECT);

const cases = JSON.parse(readFileSync(join(GOLDEN, "cases.json"), "utf8"));
const unknown = named.filter((name) => !cases.some(({ file }) => file === name));
if (unknown.length > 0) {
  console.error(`update-golden: no such case: ${unknown.join(", ")}`);
  process.exitCode = 1;
}
for (const { file, args, exit = 0 } of cases) {
  if (named.length > 0 && !named.includes(file)) continue;
  const run = spawnSync(process.execPath, ["bin/stillband.js", ...args], {
    cwd: PROJECT,
    env: { PATH: process.env.PATH },
    encoding: "utf8",
    maxBuffer: 1 << 26,
  });
  const path = join(GOLDEN, file);
  if (run.status !== exit) {
    console.error(`update-golden: ${file}: exit ${run.status}, left alone\n${run.stderr}`);
    process.exitCode = 1;
    continue;
  }
  const before = existsSync(path) ? readFileSync(path, "utf8") : undefined;
  if (before !== run.stdout) writeFileSync(path, run.stdout);
  console.log(`${before === undefined ? "new" : before === run.stdout ? "same" : "CHANGED"}  ${file}`);
}

// The README shows the beginning of some of them as they are, each between its marks.
const SHOWN = [
  { mark: "demo", file: "channel-demo.txt", until: "\nBehind radio ch" },
  { mark: "verify", file: "verify-ropewalk.txt", until: "\n\nReceivers, what" },
  { mark: "place", file: "place-studio.txt", until: "\nAssumed" },
];
const readme = join(PROJECT, "README.md");
let text = readFileSync(readme, "utf8");
for (const { mark, file, until } of SHOWN) {
  const beginning = readFileSync(join(GOLDEN, file), "utf8").split(until)[0].trimEnd();
  const shown = `<!-- ${mark} -->\n\n\`\`\`text\n${beginning}\n\`\`\`\n\n<!-- /${mark} -->`;
  text = text.replace(new RegExp(`<!-- ${mark} -->[\\s\\S]*<!-- /${mark} -->`), () => shown);
}
// And the help of every command, from the one table of them.
const commands = cases.filter(({ args }) => args.length === 2 && args[1] === "--help");
const sections = commands.map(({ file, args: [name] }) => {
  const help = readFileSync(join(GOLDEN, file), "utf8");
  return `<details>\n<summary><code>stillband ${name}</code></summary>\n\n\`\`\`text\n${help}\`\`\`\n\n</details>`;
});
const helpBlock = `<!-- help -->\n\n${sections.join("\n\n")}\n\n<!-- /help -->`;
text = text.replace(/<!-- help -->[\s\S]*<!-- \/help -->/, () => helpBlock);
writeFileSync(readme, text);
