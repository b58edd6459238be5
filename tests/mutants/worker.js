// Runs the tests of instrumented bundles in this process: all of them to see which mutants each test reaches,
// then for one mutant after the other those that reach it, until one fails.
import fc from "fast-check";
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import vm from "node:vm";
import { collected, testFunctions } from "./test-functions.js";

// One seed, so that a mutant that is killed is killed every time; no shrinking, as nobody reads the example.
fc.configureGlobal({ numRuns: 10, seed: 2400, endOnFailure: true });

const required = createRequire(import.meta.url);
const require = (name) => (name === "vitest" ? testFunctions : name === "fast-check" ? fc : required(name));
const state = (globalThis.__stryker__ = {});

/** A test that runs mutable code more often than this would take the whole day: it is left out. */
const MOST_CALLS = 6_000_000;
/** A mutant that a test runs so many times more often than the code it stands for is in an endless loop. */
const MOST_HITS_RATIO = 20;

/** How often each mutant's place was run, by its number, and how often any was. */
let hits = {};
let calls = 0;
let mostCalls = Infinity;
globalThis.countMutants = (ids) => {
  if (++calls > mostCalls) throw new Error("too many calls");
  for (const id of ids) hits[id] = (hits[id] ?? 0) + 1;
};

const loaders = new Map();
/** @returns the tests of a bundle, its modules run afresh: mutants change tables too, and a module may remember */
function testsOf(file, counting) {
  const key = `${file} ${counting}`;
  if (!loaders.has(key)) {
    const counter = counting ? "return countMutants(arguments);" : "return;";
    const code = readFileSync(file, "utf8").replace(/function stryCov_\w+\(\) \{/g, `$& ${counter}`);
    const wrapped = `(function (require, module, exports) {${code}\n})`;
    loaders.set(key, new vm.Script(wrapped, { filename: file }).runInThisContext());
  }
  const module = { exports: {} };
  return collected(() => loaders.get(key)(require, module, module.exports));
}

async function measure({ file }) {
  [hits, calls, mostCalls] = [{}, 0, Infinity];
  const found = testsOf(file, true);
  const loading = hits;
  const tests = [];
  for (const { name, body } of found) {
    [hits, calls, mostCalls] = [{}, 0, MOST_CALLS];
    const from = performance.now();
    let failure = null;
    try {
      await body();
    } catch (error) {
      failure = String(error);
    }
    const tooLong = calls > MOST_CALLS;
    tests.push({
      name,
      ms: performance.now() - from,
      failure: tooLong ? null : failure,
      tooLong,
      calls,
      hits,
    });
  }
  return { loading, tests };
}

/** @param runs the tests to run, in this order; @returns who killed the mutant, if anyone did */
async function attack({ mutant, runs }) {
  const loaded = new Map();
  let name = "";
  try {
    for (const [step, { file, index, hits }] of runs.entries()) {
      process.send({ step });
      state.activeMutant = mutant;
      state.hitCount = 0;
      state.hitLimit = MOST_HITS_RATIO * hits + 1000;
      name = `loading ${file}`;
      if (!loaded.has(file)) loaded.set(file, testsOf(file, false));
      const test = loaded.get(file)[index];
      name = test?.name ?? "a test that isn't there any more";
      await test.body();
    }
    return { status: "survived", by: null };
  } catch (error) {
    const by = `${name}: ${String(error).slice(0, 200)}`;
    return { status: state.hitCount > state.hitLimit ? "timeout" : "killed", by };
  } finally {
    state.activeMutant = undefined;
  }
}

process.on("message", async (request) => {
  process.send(await (request.mutant === undefined ? measure(request) : attack(request)));
});
