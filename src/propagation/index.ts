export { collinearBeamwidthDeg } from "./antenna-collinear.js";
export { antennaGainDbi, antennaPeakGainDbi, antennaRadiatedRatio, gainTowards } from "./antenna-gain.js";
export { moveAside } from "./antenna-move-aside.js";
export type { MoveAside } from "./antenna-move-aside.js";
export { antennaTerms, inAntennaNull, NULL_DEPTH_DB } from "./antenna-terms.js";
export type { AntennaPair, AntennaTerms } from "./antenna-terms.js";
export { antennaWords } from "./antenna-words.js";
export type { Vector3 } from "./antenna-vector.js";
export type {
  Antenna,
  AntennaMount,
  CollinearAntenna,
  DipoleAntenna,
  IsotropicAntenna,
  Mounting,
  PanelAntenna,
} from "./antenna.js";
export { buildingLosses, floorLossDb, indoorModelOf } from "./building-loss.js";
export type { Building, BuildingLoss } from "./building-loss.js";
export { FITTED_UP_TO_M } from "./caveat.js";
export type { Caveat } from "./caveat.js";
export { fadeAllowanceDb, fadeMarginDb } from "./fade-allowance.js";
export { fadeLawWords, referenceFadeLaw } from "./fade-law.js";
export type { FadeLaw, FadeLawName } from "./fade-law.js";
export { fadeOutageRatio } from "./fade-outage.js";
export { fadeReference, meanOverMedianDb, referenceOverMedianDb } from "./fade-reference.js";
export type { FadeReference } from "./fade-reference.js";
export { freeSpacePathLossDb } from "./free-space-path-loss.js";
export { indoorAbgPathLossDb } from "./indoor-abg-path-loss.js";
export type { IndoorAbgPath } from "./indoor-abg-path-loss.js";
export { indoorAbgRow, indoorAbgRows } from "./indoor-abg-table.js";
export type { IndoorAbgRow, IndoorPlace, IndoorSight } from "./indoor-abg-table.js";
export { indoorPathLossDb } from "./indoor-path-loss.js";
export type { IndoorPath } from "./indoor-path-loss.js";
export { linkBudget } from "./link-budget.js";
export type { Limit, LinkBudget, LinkTerms } from "./link-budget.js";
export { linkReach, linkRow, linkTable, profileTerms } from "./link-table.js";
export type { LinkRow, LinkSetting, ProfileTerms } from "./link-table.js";
export { logDistancePathLossDb } from "./log-distance-path-loss.js";
export type { LogDistancePath } from "./log-distance-path-loss.js";
export { OPAQUE_LOSS_DB } from "./material.js";
export type { Material, MaterialCoefficients, WallCaveat } from "./material.js";
export { findMaterial } from "./material-find.js";
export type { Complex } from "../numeric/index.js";
export { materialPermittivity } from "./material-permittivity.js";
export { materials } from "./material-table.js";
export type { MaterialName } from "./material-table.js";
export { pathLoss, pathLossDb } from "./path-loss.js";
export type { PathLoss, PathPoint } from "./path-loss.js";
export { pathModelSigmaDb, pathModelWords, referencePathModel } from "./path-model.js";
export type {
  FreeSpaceModel,
  IndoorAbgModel,
  IndoorModel,
  LogDistanceModel,
  PathModel,
} from "./path-model.js";
export { antennaPairOf, placedLink, placedLinkFrom } from "./placed-link.js";
export type { LinkEnd, PlacedLink, PlacedLinkQuery } from "./placed-link.js";
export { indoorPolarisationCapDb, polarisationLossDb } from "./polarisation-loss.js";
export type { PolarisationPair } from "./polarisation-loss.js";
export { PATH_MODEL_SCHEMA, readPathModel } from "./read-path-model.js";
export type { PathModelImport } from "./read-path-model.js";
export { reachM, findReach } from "./reach.js";
export type { Reach } from "./reach.js";
export { receivedDbm } from "./received.js";
export type { ReceivedLines, ReceivedTerms } from "./received.js";
export { slabTransmission, slabTransmissionLossDb } from "./slab-transmission.js";
export type { SlabQuery } from "./slab-transmission.js";
export type { SlabPolarisation, WallIncidence, WallLayer } from "./slab-wave.js";
export { verdictOf } from "./verdict.js";
export type { Verdict } from "./verdict.js";
export { layersTransmission } from "./wall-layers.js";
export type { LayersQuery } from "./wall-layers.js";
export { wallLoss, wallLossDb } from "./wall-loss.js";
export type { KnownWall, LayeredWall, WallCrossing, WallLoss } from "./wall-loss.js";
export {
  layersPlanningLoss,
  PLANNING_BAND_MHZ,
  slabPlanningLoss,
  slabPlanningLossDb,
} from "./wall-planning-loss.js";
export type { LayersPlanningQuery, SlabPlanningQuery, WallPlanningLoss } from "./wall-planning-loss.js";
export type { WallTransmission } from "./wall-transmission.js";
