export { bisect } from "./bisect.js";
export { findRoot } from "./find-root.js";
export { noncentralChiSquareCdf } from "./noncentral-chi-square.js";
export { normalTailQuantile } from "./normal-quantile.js";
export { normalCdf, normalTail } from "./normal-tail.js";
export { poissonMass } from "./poisson-mass.js";
export { seededRandom } from "./seeded-random.js";
export { trapezoid } from "./trapezoid.js";
