export type { Interval, PathLossEstimate } from "./fit-estimate.js";
export type { FitOutlier } from "./fit-outliers.js";
export { nameKey } from "./name-key.js";
export { fitPathLoss } from "./fit-path-loss.js";
export { EXPONENT_LIMITS, LEAST_HEARD_COUNT, LEAST_SPAN_RATIO } from "./fit-refusal.js";
export type { FitRefusal, FitRefusalCode } from "./fit-refusal.js";
export type { FitNote, FittedPathLoss, PathLossFit, RefusedPathLoss } from "./path-loss-fit.js";
export type { PathLossReadings } from "./path-loss-readings.js";
export { isPathModelRecord } from "./is-path-model-record.js";
export { pathModelPredictionDb } from "./path-model-prediction.js";
export type { PathPrediction } from "./path-model-prediction.js";
export { pathModelRecord } from "./path-model-record.js";
export type { PathModelRecord, PathModelResidual } from "./path-model-record.js";
export { readReadings } from "./read-readings.js";
export { WALK_COLUMNS } from "./reading-columns.js";
export type { ReadingColumn } from "./reading-columns.js";
export { walkLosses } from "./walk-losses.js";
export type { WalkLosses, WalkTerms } from "./walk-losses.js";
export type { CutRow, ReadingsImport, ReadReadingsOptions, WalkReading } from "./walk-reading.js";
export { LOOSE_DB, SUSPECT_DB } from "./antenna-suspects.js";
export { AS_GOOD_DB, channelToday } from "./channel-today.js";
export type { ChannelToday, RankedChannel } from "./channel-today.js";
export { compareBands } from "./compare-bands.js";
export type { BandComparison, ChannelCause, PlannedRanking, SystemToday } from "./compare-bands.js";
export { comparePlanRecords } from "./compare-plan-records.js";
export type {
  AssumptionChange,
  ChannelChange,
  InputChange,
  PlanComparison,
  ReceiverChange,
} from "./compare-plan-records.js";
export { compareReadings } from "./compare-readings.js";
export type { ReadingsComparison, ReadingsFinding } from "./compare-readings.js";
export { PLAN_SCHEMA, planRecord } from "./plan-record.js";
export type { PlanAssumption, PlanInput, PlannedReceiver, PlannedSystem, PlanRecord } from "./plan-record.js";
export type {
  AntennaSuspicion,
  ReceiverCheck,
  ReceiverPrediction,
  ReceiverReading,
  ReceiverVerdict,
} from "./receiver-check.js";
export { ROOM_BIAS_DB } from "./room-check.js";
export type { RoomCheck } from "./room-check.js";
export { watchMargin } from "./watch-margin.js";
export type { DatedMargin, MarginWatch } from "./watch-margin.js";
export { readPathModelRecord } from "./read-path-model-record.js";
export type { PathModelRecordImport } from "./read-path-model-record.js";
export { readPlanRecord } from "./read-plan-record.js";
export type { PlanImport } from "./read-plan-record.js";
export { readingIntervalDb } from "./reading-interval.js";
export type { LocalMeanSpread, ReadingIntervalDb } from "./reading-interval.js";
