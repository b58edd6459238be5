import { describe, expect, it } from "vitest";
import { CROWDS } from "../../src/scan/index.js";
import { crowdRank } from "../../src/scan/survey-crowd.js";

describe("crowdRank", () => {
  it("ranks empty, part, full, and a blank crowd as part", () => {
    expect(CROWDS.map(crowdRank)).toEqual([0, 1, 2]);
    expect(CROWDS).toEqual(["empty", "part", "full"]);
    expect(crowdRank(null)).toBe(crowdRank("part"));
  });
});
