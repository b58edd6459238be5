export type { Emitter } from "./emitter.js";
export { brickWall, mirroredShape, requireShape } from "./shape.js";
export type { Shape, ShapePoint } from "./shape.js";
export { overlapDbByOffset, spectralOverlapDb, totalPower } from "./spectral-overlap.js";
export { sweepLevelDbm } from "./sweep-levels.js";
export type { SweepChannelLevels, SweepLevels } from "./sweep-levels.js";
export { transmitShapes } from "./transmit-shapes.js";
export type { TransmitShapeName } from "./transmit-shapes.js";
export { RADIO_BAND_MHZ, READ_BAND_MHZ, wifiChannelCentreMhz } from "./wifi-channels.js";
