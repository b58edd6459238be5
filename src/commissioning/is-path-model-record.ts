import type { PathModel } from "../propagation/index.js";
import type { PathModelRecord } from "./path-model-record.js";

/**
 * Was the model fitted on site, so that it knows how far it can be trusted?
 * @returns true of a record, whose covariance and σ are its own
 * @example isPathModelRecord({ kind: "log-distance", exponent: 2, referenceLossDb: 40 }); // => false
 */
export function isPathModelRecord(model: PathModel): model is PathModelRecord {
  return model.kind === "log-distance" && "covariance" in model;
}
