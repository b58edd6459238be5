// What a test file imports from vitest, for tests that run in this process: each file's tests are collected,
// and the matchers are vitest's own.
import { chai } from "@vitest/expect";
import { GLOBAL_EXPECT, JestAsymmetricMatchers, JestChaiExpect, JestExtend, setState } from "@vitest/expect";

for (const plugin of [JestExtend, JestChaiExpect, JestAsymmetricMatchers]) chai.use(plugin);
const { expect } = chai;
globalThis[GLOBAL_EXPECT] = expect;
setState({ assertionCalls: 0, isExpectingAssertions: false }, expect);

let tests = [];
let path = [];

function describe(name, body) {
  path.push(name);
  body();
  path.pop();
}
function test(name, body) {
  tests.push({ name: [...path, name].join(" > "), body });
}
/** Of a table, or of a template's; a row that is a list is spread over the arguments. */
function each(add) {
  return (rows) => (name, body) =>
    rows.forEach((row, index) =>
      add(`${name} [${index}]`, () => body(...(Array.isArray(row) ? row : [row]))),
    );
}
describe.each = each(describe);
test.each = each(test);

export const testFunctions = { describe, expect, it: test, test };

/** @returns the tests that a file's code adds while it runs */
export function collected(load) {
  tests = [];
  path = [];
  load();
  return tests;
}
