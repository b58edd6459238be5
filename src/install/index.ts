export { cautionsFor } from "./cautions.js";
export type { Caution, CautionKind } from "./cautions.js";
export { chooseConductor, LEAST_AWG } from "./choose-conductor.js";
export type { ConductorTerms } from "./choose-conductor.js";
export { circuitSheet } from "./circuit-sheet.js";
export type {
  Circuit,
  CircuitControl,
  CircuitFlag,
  CircuitLuminaire,
  CircuitOptions,
  CircuitRow,
  CircuitSheet,
  ConductorChoice,
  LuminaireDrop,
} from "./circuit-types.js";
export { cordAmpacity } from "./cord-ampacity.js";
export type { CordAmpacity } from "./cord-ampacity.js";
export { AWG_CORDS, MM2_CORDS } from "./cord-conductors.js";
export type { CordConductor, WireOrigin } from "./cord-conductors.js";
export { ownBoxDropsV, throughFedDropsV } from "./cord-drop.js";
export type { CordDropTerms } from "./cord-drop.js";
export { crewCell } from "./crew-cell.js";
export type { CrewKind, CrewUnits } from "./crew-cell.js";
export { CREW_COLUMNS } from "./crew-columns.js";
export type { CrewColumn, CrewPoint } from "./crew-columns.js";
export { crewFigures } from "./crew-figures.js";
export type { CrewFault, CrewFigures } from "./crew-figures.js";
export { emergencyNotice } from "./emergency-notice.js";
export type { EmergencyNotice } from "./emergency-notice.js";
export { CIRCUIT_FLAG_WORDS, HANG_FLAG_WORDS } from "./flag-words.js";
export { HANG_DEFAULTS } from "./hang-figures.js";
export type { HangFigures, HangsFrom, Suspension } from "./hang-figures.js";
export { BOX_LIMIT_KG, RATING_NOT_GIVEN } from "./hang-load.js";
export type { HangLoad, RatedPart, RatingCheck } from "./hang-load.js";
export type { HangOptions, HangPoint, RoomTrim } from "./hang-options.js";
export { SWIVEL_SLOPE_DEG } from "./hang-row.js";
export { hangSheet } from "./hang-sheet.js";
export type {
  HangCord,
  HangDatum,
  HangFlag,
  HangGap,
  HangLevel,
  HangRow,
  HangSheet,
  SuspensionTotal,
} from "./hang-sheet-types.js";
export { CHECK_READING_COLUMNS } from "./install-check.js";
export type {
  CheckBlank,
  CheckCode,
  CheckNote,
  CheckPart,
  CheckReadingColumn,
  CheckStage,
  InstallCheck,
} from "./install-check.js";
export { installChecks } from "./install-checks.js";
export type {
  InstallChannel,
  InstallCircuit,
  InstallLuminaire,
  InstallReceiver,
  InstallSystem,
  InstallTerms,
} from "./install-terms.js";
export { suspensionTotals } from "./hang-totals.js";
export { levelSteps } from "./level-steps.js";
export type { LevelStepsOptions } from "./level-steps.js";
export { orderList } from "./order-list.js";
export type {
  LengthItem,
  LengthLine,
  LengthNeed,
  OrderGap,
  OrderList,
  OrderOptions,
  OrderReceiver,
  OrderSystem,
  PieceItem,
  PieceLine,
  PieceNeed,
} from "./order-types.js";
export { spoolOrder } from "./spool-order.js";
export type { SpoolOrder } from "./spool-order.js";
export { SCAN_DRILL, surveyForm } from "./survey-form.js";
export type { FormAnswer, FormField, FormSection } from "./survey-form.js";
export { troubleCard } from "./trouble-card.js";
export type { TroubleEntry } from "./trouble-card.js";
export { unevenOffsetsM } from "./uneven-offsets.js";
export { awgAreaMm2, awgDiameterMm, copperResistanceOhmPerM } from "./wire-gauge.js";
