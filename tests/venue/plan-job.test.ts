import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { findProfile } from "../../src/radio/index.js";
import { planChannel, planJob, referenceSetting } from "../../src/venue/index.js";
import { accessPoint } from "../helpers/venue-emitters.js";

const options = { emitters: [accessPoint(6)], profile: findProfile("raster-13") };

describe("planJob", () => {
  // 0.99^20 = 0.8179069 (four-figure tables: 0.8179); 20 · 0.01 = 0.2
  it("twenty receivers at 99 %, by hand", () => {
    const { job, jobReason, exampleJob } = planJob({
      receiverCount: 20,
      reliability: 0.99,
      setForAll: false,
    });
    expect(job).toEqual({
      receiverCount: 20,
      reliability: 0.99,
      expectedInHoleCount: expect.closeTo(0.2, 12) as number,
      allHoldProbability: expect.closeTo(0.8179069, 7) as number,
      setForAll: false,
    });
    expect([jobReason, exampleJob]).toEqual([null, null]);
  });

  it("without their number: null with the reason, and twenty as an example", () => {
    const { job, jobReason, exampleJob } = planJob({
      receiverCount: null,
      reliability: 0.9,
      setForAll: false,
    });
    expect(job).toBeNull();
    expect(jobReason).toMatch(/not stated/);
    expect([exampleJob!.receiverCount, exampleJob!.expectedInHoleCount]).toEqual([
      20,
      expect.closeTo(2, 12) as number,
    ]);
  });

  it.each([0, 1.5, NaN, 2e6])("throws for %s receivers", (receiverCount) => {
    expect(() => planJob({ receiverCount, reliability: 0.9, setForAll: false })).toThrow(ArgumentError);
  });
});

describe("planChannel with the whole job", () => {
  it("a chance for all sets the share for each, and the fade allowance with it", () => {
    const plan = planChannel({ ...options, receiverCount: 20, allHoldProbability: 0.99 });
    // ln 0.99 = −0.01005033585, over 20: x = −0.00050251679; 1 + x + x²/2 = 0.99949760947
    expect(plan.setting.reliability).toBeCloseTo(0.9994976094, 9);
    expect(plan.job!.allHoldProbability).toBeCloseTo(0.99, 12);
    expect(plan.job!.setForAll).toBe(true);
    const each = planChannel({ ...options, reliability: plan.setting.reliability });
    expect(plan.link.fadeAllowanceDb).toBe(each.link.fadeAllowanceDb);
    expect(plan.link.fadeAllowanceDb).toBeGreaterThan(planChannel(options).link.fadeAllowanceDb + 3);
  });

  it("a number of receivers alone changes nothing but the job", () => {
    const { job, jobReason, exampleJob, setting, ...told } = planChannel({ ...options, receiverCount: 7 });
    const { setting: plain, ...other } = planChannel(options);
    expect(told).toEqual(expect.objectContaining({ link: other.link, frames: other.frames }));
    expect([job!.receiverCount, jobReason, exampleJob]).toEqual([7, null, null]);
    expect(setting.reliability).toBe(plain.reliability);
  });

  it.each([
    ["a chance for all without their number", { allHoldProbability: 0.9 }, "receiverCount"],
    [
      "a chance for all beside a share for each",
      { allHoldProbability: 0.9, receiverCount: 3, reliability: 0.9 },
      "reliability",
    ],
    ["a chance of 1", { allHoldProbability: 1, receiverCount: 3 }, "allHoldProbability"],
    ["no receivers", { receiverCount: 0 }, "receiverCount"],
  ])("throws for %s", (_, wrong, argument) => {
    expect(() => planChannel({ ...options, ...wrong })).toThrow(ArgumentError);
    expect(() => planChannel({ ...options, ...wrong })).toThrow(argument);
  });

  it("an event of no length is a mistake", () => {
    expect(referenceSetting(options).eventMinutes).toBe(90);
    expect(() => planChannel({ ...options, eventMinutes: 0 })).toThrow(ArgumentError);
  });
});
