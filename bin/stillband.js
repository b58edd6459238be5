#!/usr/bin/env node
import { main } from "../dist/cli/index.js";

for (const stream of [process.stdout, process.stderr])
  stream.on("error", (error) => {
    if (error.code !== "EPIPE") throw error;
  });
process.exitCode = await main(process.argv.slice(2), {
  out: process.stdout,
  err: process.stderr,
  stdin: process.stdin,
  env: process.env,
});
