#!/usr/bin/env node
// The command is one script; the build leaves V8's code cache for it beside it, made by the Node that built it,
// so that a start compiles next to nothing. Another Node, or none there: it is compiled as usual.
"use strict";
const { readFileSync } = require("node:fs");
const { join } = require("node:path");
const vm = require("node:vm");

const filename = join(__dirname, "../dist/cli/index.js");
const options = { filename };
try {
  options.cachedData = readFileSync(join(__dirname, "../dist/cli/index.cache"));
} catch {
  // Not built here.
}
const command = { exports: {} };
new vm.Script(readFileSync(filename, "utf8"), options).runInThisContext()(command.exports, require, command);

for (const stream of [process.stdout, process.stderr])
  stream.on("error", (error) => {
    if (error.code !== "EPIPE") throw error;
  });
const { stdout: out, stderr: err, stdin, env } = process;
command.exports.main(process.argv.slice(2), { out, err, stdin, env }).then((code) => {
  process.exitCode = code;
});
