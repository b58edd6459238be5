export { busyCells, meanBusyRatio } from "./busy-cells.js";
export type { BusyCell } from "./busy-cells.js";
export { passesIn, sweptCells } from "./busy-swept.js";
export { radioLine } from "./assumptions.js";
export { channelJson } from "./channel-json.js";
export type { ChannelReport } from "./channel-report.js";
export { channelText } from "./channel-text.js";
export type { ChannelChange, CrowdChange } from "./crowd-change-lines.js";
export type { CsvTable } from "./csv-table.js";
export { fitJson } from "./fit-json.js";
export type { DistancePrediction, FitReport } from "./fit-report.js";
export { fitText } from "./fit-text.js";
export { formHtml } from "./form-html.js";
export { formJson } from "./form-json.js";
export type { FormReport, FormRoom } from "./form-report.js";
export { formText } from "./form-text.js";
export { hangCsv } from "./hang-csv.js";
export { hangJson } from "./hang-json.js";
export type { CrewSheet, HangReport } from "./hang-report.js";
export { hangText } from "./hang-text.js";
export { linkJson, linkText } from "./link-text.js";
export { patchCsv } from "./patch-csv.js";
export { patchJson } from "./patch-json.js";
export { patchLabelsText } from "./patch-labels-text.js";
export type { PatchReport } from "./patch-report.js";
export { patchText } from "./patch-text.js";
export { plainPen } from "./pen.js";
export type { LengthUnit, Pen, TextStyle } from "./pen.js";
export { profilesText, profileText } from "./profile-text.js";
export { regionText } from "./region-text.js";
export type { JudgedProfile } from "./region-text.js";
export { regulationBlock } from "./regulation-json.js";
export { spectrogram, SURVEY_GRID } from "./spectrogram.js";
export { surveyJson } from "./survey-json.js";
export { issueLines } from "./survey-lines.js";
export { surveyText } from "./survey-text.js";
export type { CrowdSummary, SourceHit, SurveyReport } from "./survey-report.js";
export { placeJson } from "./place-json.js";
export type { FloorPicture, PlacedSystem, PlaceReport, SystemPlacement } from "./place-report.js";
export { placeText } from "./place-text.js";
export { PLAN_COLUMNS, planStepM } from "./plan-picture.js";
export { venueLinkJson } from "./venue-link-json.js";
export type { ReceiverForecast } from "./receiver-forecast.js";
export type {
  Expected,
  JudgedSystem,
  VerifiedBand,
  VerifiedChannel,
  VerifiedPlan,
  VerifiedReadings,
  VerifiedWatch,
  VerifyFinding,
  VerifyReport,
  WatchedSystem,
} from "./verify-report.js";
export { verifyJson } from "./verify-json.js";
export { verifyText } from "./verify-text.js";
export type { VenueLinkReport } from "./venue-link-report.js";
export { venueLinkText } from "./venue-link-text.js";
export { roomsJson } from "./rooms-json.js";
export type { CrowdMargin, JointRoom, RoomReport, RoomsReport, WeakestReceiver } from "./rooms-report.js";
export { roomsText } from "./rooms-text.js";
export { linksCsv } from "./links-csv.js";
export { planText } from "./plan-text.js";
export type { PlanFile } from "./plan-text.js";
export { planJson } from "./plan-json.js";
export type { CurvePoint, PlanReport, RoomBand, RoomFit, SystemCurve } from "./plan-report.js";
export { audienceWords } from "./audience-words.js";
export { sourceName, presumedOwner } from "./channel-tables.js";
export { CHECKS_KEY } from "./hang-text.js";
export { checkWords, STAGE_TITLES } from "./check-lines.js";
export { circuitAssumptions } from "./circuit-assumptions.js";
export { circuitFlagLines, cordChoice, cordFrom, FEED_WORDS } from "./circuit-tables.js";
export { checkAssumptions, orderAssumptions } from "./crew-assumptions.js";
export { emergencyStatements } from "./emergency-lines.js";
export { evidenceStatements } from "./evidence-section.js";
export { hangAssumptions } from "./hang-assumptions.js";
export { hangFlagLines } from "./hang-flag-lines.js";
export { hangGlance } from "./hang-glance.js";
export { hangNote, weightVerdict } from "./hang-tables.js";
export { cordOf, lengthCell, orderWords, weightWords } from "./hang-words.js";
export { htmlText } from "./html-text.js";
export { jointStatements } from "./joint-words.js";
export { dBi, dBm, lengthText, minus } from "./level-words.js";
export {
  dB,
  exactPercent,
  fixed,
  lossPercent,
  reachLengths,
  sharePercent,
  wholePercent,
} from "./number-format.js";
export { lengthItemWords, orderGapLines, PIECE_WORDS } from "./order-lines.js";
export { patchAssumptions } from "./patch-assumptions.js";
export { conflictLines } from "./patch-conflict-lines.js";
export { patchGlance } from "./patch-glance.js";
export { LABELS_KEY } from "./patch-labels-text.js";
export { modeLetter } from "./patch-mode-table.js";
export { overflowLines } from "./patch-overflow-lines.js";
export { patchNotes, SWITCH_KEY } from "./patch-tables.js";
export { fewestLines } from "./patch-universe-table.js";
export { nameOf, switchPicture } from "./patch-words.js";
export { placeAssumptions } from "./place-assumptions.js";
export { letteredPlaces } from "./place-tables.js";
export { antennaInBrief, placeName, spareWords } from "./place-words.js";
export { practiceLine, PRACTICE_TITLE } from "./practice-lines.js";
export { bareSource } from "./profile-text.js";
export { regulationLines, sourceWords } from "./regulation-lines.js";
export { roomLines, roomTitle } from "./room-lines.js";
export { roomsAssumptions } from "./rooms-assumptions.js";
export { leastDb, roomsGlance } from "./rooms-glance.js";
export { couplingWords } from "./rooms-text.js";
export { labelled } from "./section.js";
export { surveyAssumptions } from "./survey-assumptions.js";
export { wifiWords } from "./survey-text.js";
export { venueCautions } from "./venue-cautions.js";
export { channelWords, hurtWords, mendWords } from "./venue-link-words.js";
export { OFF_ASK, REQUEST_TITLE, requestStatements } from "./venue-request-lines.js";
export { verdictMark, verdictWord } from "./verdict-mark.js";
export { bandModel, roomBandModel } from "./band-model.js";
export type { BandChannel, BandModel } from "./band-model.js";
export { BUSY_STEP_RATIO, busyColumns } from "./busy-columns.js";
export type { BusyColumn } from "./busy-columns.js";
export { busySpokenWords } from "./busy-picture.js";
export { frequencyTicksMhz } from "./frequency-ticks.js";
export { hopModel, receiverHopModel } from "./hop-model.js";
export type { HopFrequency, HopModel } from "./hop-model.js";
export { marginAt } from "./plan/margin-at.js";
export { floorTitle, linkFloors, placedFloor, wallsOfStorey } from "./plan-model.js";
export type { FloorModel, FloorSpot } from "./plan-model.js";
export { distanceTicks, keptResiduals, logShareRatio, residualScale } from "./residual-scale.js";
export type { PlotPoint, ResidualScale } from "./residual-scale.js";
export type { Spectrogram, SpectrogramRow } from "./spectrogram.js";
export { shadeEdgesDbm, shadeIndex, shadeWords } from "./spectrogram-shades.js";
export { newDays, rowClock, spectrogramHead } from "./spectrogram-words.js";
export { clipped, wrapped } from "./text-layout.js";
export { VERDICT_LIMITS_DB } from "./verdict-mark.js";
