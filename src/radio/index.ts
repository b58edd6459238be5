export { builtInProfiles, findProfile } from "./built-in-profiles.js";
export { rasterChannels } from "./channel-plan.js";
export type { ChannelRaster } from "./channel-plan.js";
export { breachIssue, clampToRegion } from "./clamp-to-region.js";
export type { RegionalProfile } from "./clamp-to-region.js";
export { driverCrossCheck, driverLimits } from "./driver-cross-check.js";
export type { DriverCrossCheck, DriverLimit } from "./driver-cross-check.js";
export { enclosureLosses } from "./enclosure.js";
export { judgeRegion } from "./judge-region.js";
export type { AppliedLimit, RegionJudgement, RegionQuestion } from "./judge-region.js";
export { leastHopsOf, withLeastHops } from "./least-hops.js";
export { nearestWord } from "./nearest-word.js";
export { noiseFloorDbm, profileNoiseFloorDbm, THERMAL_NOISE_DBM_PER_HZ } from "./noise-floor.js";
export type { Enclosure, Figure, FigureStatus, HopPlan, RadioChannel, RadioProfile } from "./profile.js";
export { figureExpectation, figureMeanings } from "./figure-meanings.js";
export type { FigureKey } from "./profile-figures.js";
export { profileJson } from "./profile-json.js";
export { profileTemplate } from "./profile-template.js";
export { readProfile } from "./read-profile.js";
export type { ProfileImport } from "./read-profile.js";
export { regionRules } from "./region-rules.js";
export { LOCAL_RULES_DECIDE } from "./regulation.js";
export type {
  AdaptivityRule,
  DensityLimit,
  DwellLimit,
  PowerRule,
  RegionCode,
  RegionRule,
  RuleFigure,
  RuleNote,
  RuleReading,
} from "./regulation.js";
export type { RegulationBreach } from "./regulation-breach.js";
export { regulationIssues, regulationReview } from "./regulation-review.js";
export type { AdaptivityReview, RegulationReview } from "./regulation-review.js";
export { receiverSelectivity, stepShape } from "./step-shape.js";
export type { ShapeStep } from "./step-shape.js";
export { transmitAirtimeRatio } from "./transmit-airtime.js";
