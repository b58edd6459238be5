// Runs the built command once on the demo's scans and writes V8's code cache of all that ran: dist/cli/index.cache.
// Usage: node tests/tools/code-cache.js PROJECT_FOLDER   (the last step of tests/tools/build.js)
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { Readable, Writable } from "node:stream";
import vm from "node:vm";

const project = process.argv[2];
const filename = join(project, "dist/cli/index.js");
const script = new vm.Script(readFileSync(filename, "utf8"), { filename });
const command = { exports: {} };
script.runInThisContext()(command.exports, createRequire(import.meta.url), command);

const nowhere = () => new Writable({ write: (_chunk, _encoding, done) => done() });
const scans = ["ropewalk-full.csv", "ropewalk-foyer-iw.txt"].map((file) =>
  join(project, "fixtures/scans", file),
);
for (const words of [["channel", ...scans], ["survey", ...scans], ["link"]]) {
  const io = { out: nowhere(), err: nowhere(), stdin: Readable.from([]), env: {} };
  const exitCode = await command.exports.main(words, io);
  if (exitCode !== 0)
    throw new Error(`stillband ${words[0]}: exit ${exitCode} while its code cache was made`);
}
writeFileSync(join(project, "dist/cli/index.cache"), script.createCachedData());
