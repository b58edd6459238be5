// Mutation testing: changes the sources in one place after the other and tells which changes no test notices.
// Usage: node tests/tools/mutants.js [--json FILE] [FOLDER_OR_FILE...]   (default: the rooms below)
// Downloads the instrumenter into the system's temporary folder the first time.
import { fork } from "node:child_process";
import { readFileSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join, relative, resolve } from "node:path";
import { bundled, instrumented } from "../mutants/instrument.js";

const PROJECT = resolve(import.meta.dirname, "../..");
const ROOMS = ["band", "scorer", "propagation"];
const FOLDER = join(tmpdir(), `stillband-mutants-${process.getuid?.() ?? "user"}`);
const MEASURING_WAIT_MS = 600_000;
/** A test may take so much longer with a mutant than it took while the calls were counted. */
const WAIT_RATIO = 5;
const LEAST_WAIT_MS = 12_000;

const filesUnder = (path) =>
  statSync(path).isDirectory()
    ? readdirSync(path, { recursive: true, encoding: "utf8" }).map((name) => join(path, name))
    : [path];

/** A process that answers one request at a time and is replaced when it is silent for too long. */
class Worker {
  #child = null;
  /** @param waitMs how long for an answer, or for word of the next step, of the step begun last */
  ask(request, waitMs) {
    this.#child ??= fork(join(PROJECT, "tests/mutants/worker.js"), {
      execArgv: ["--max-old-space-size=2048"],
    });
    const child = this.#child;
    return new Promise((done) => {
      const finish = (answer) => {
        clearTimeout(timer);
        child.removeAllListeners();
        if (answer === null) {
          child.kill("SIGKILL");
          this.#child = null;
        }
        done(answer);
      };
      const wait = (step) => setTimeout(() => finish(null), waitMs(step));
      let timer = wait(0);
      child.on("message", (message) => {
        if (message.step === undefined) return finish(message);
        clearTimeout(timer);
        timer = wait(message.step);
      });
      child.on("exit", () => finish(null));
      child.send(request);
    });
  }
  end() {
    this.#child?.kill();
  }
}

async function measured(worker, bundles) {
  const files = [];
  for (const file of bundles) {
    const answer = await worker.ask({ file }, () => MEASURING_WAIT_MS);
    const failed = answer?.tests.filter(({ failure, calls }) => failure !== null && calls > 0) ?? [];
    if (answer === null || failed.length > 0)
      throw new Error(`${basename(file)} fails without any mutant: ${JSON.stringify(failed)}`);
    files.push({ file, ...answer });
    for (const { name, tooLong } of answer.tests)
      if (tooLong) console.error(`left out, too long: ${basename(file, ".test.ts.cjs")}: ${name}`);
  }
  return files;
}

/** The tests that reach a mutant, short ones first; all of a file's where its code runs while the file loads. */
function runsFor(id, files) {
  const runs = files.flatMap(({ file, tests, loading }) =>
    tests.flatMap(({ ms, calls, hits: own, tooLong }, index) => {
      const hits = (loading[id] ?? 0) + (own[id] ?? 0);
      return hits === 0 || tooLong ? [] : [{ file, index, ms, calls, hits }];
    }),
  );
  return runs.sort((a, b) => a.calls - b.calls);
}

async function attacked(worker, mutants, files) {
  const results = [];
  for (const mutant of mutants.filter(({ status }) => status !== "Ignored")) {
    const runs = runsFor(mutant.id, files);
    const request = { mutant: mutant.id, runs };
    const waitMs = (step) => LEAST_WAIT_MS + WAIT_RATIO * runs[step].ms;
    const answer =
      runs.length === 0
        ? { status: "not reached", by: null }
        : ((await worker.ask(request, waitMs)) ?? { status: "timeout", by: "clock" });
    const { location, mutatorName, replacement, fileName } = mutant;
    results.push({ file: relative(PROJECT, fileName), location, mutatorName, replacement, ...answer });
  }
  return results;
}

function describeSurvivor({ file, location: { start, end }, mutatorName, replacement, status }) {
  const lines = readFileSync(join(PROJECT, file), "utf8")
    .split("\n")
    .slice(start.line, end.line + 1);
  const last = lines.length - 1;
  lines[last] = lines[last].slice(0, end.column);
  lines[0] = lines[0].slice(start.column);
  const short = (text) => text.replace(/\s+/g, " ").slice(0, 110);
  return `${file}:${start.line + 1}:${start.column + 1} ${mutatorName}, ${status}\n    ${short(lines.join(" "))}\n    → ${short(replacement)}`;
}

const STATUSES = ["killed", "timeout", "survived", "not reached"];

function score(results) {
  const counts = STATUSES.map((status) => results.filter((result) => result.status === status).length);
  const words = STATUSES.map((status, index) => `${counts[index]} ${status}`).join(", ");
  return `${((100 * (counts[0] + counts[1])) / results.length).toFixed(1)} % of ${results.length} (${words})`;
}

const words = process.argv.slice(2);
const jsonAt = words.indexOf("--json");
const [jsonFile] = jsonAt < 0 ? [] : words.splice(jsonAt, 2).slice(1);
const sources = (words.length > 0 ? words : ROOMS.map((room) => `src/${room}`))
  .flatMap((path) => filesUnder(resolve(PROJECT, path)))
  .filter((path) => path.endsWith(".ts") && !path.endsWith("index.ts"));
const tests = ROOMS.flatMap((room) => filesUnder(join(PROJECT, "tests", room))).filter((path) =>
  path.endsWith(".test.ts"),
);
const worker = new Worker();
const { mutants, code } = await instrumented(sources, FOLDER);
const { home, bundles } = await bundled(tests, code, PROJECT, FOLDER);
try {
  const files = await measured(worker, bundles);
  const results = [];
  for (const source of sources) {
    const of = await attacked(
      worker,
      mutants.filter(({ fileName }) => fileName === source),
      files,
    );
    for (const result of of)
      if (["survived", "not reached"].includes(result.status)) console.log(describeSurvivor(result));
    results.push(...of);
    console.error(`${relative(PROJECT, source)}: ${score(of)}`);
    if (jsonFile !== undefined) writeFileSync(jsonFile, JSON.stringify(results, null, 1));
  }
  for (const room of ROOMS) {
    const of = results.filter(({ file }) => file.split(/[\\/]/)[1] === room);
    if (of.length > 0) console.log(`${room}: ${score(of)}`);
  }
} finally {
  worker.end();
  rmSync(home, { recursive: true });
}
