export { brickWall, mirroredShape, requireShape } from "./shape.js";
export type { Shape, ShapePoint } from "./shape.js";
export type { Emitter } from "./emitter.js";
