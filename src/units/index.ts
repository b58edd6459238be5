export { dbToRatio, ratioToDb, SLACK, toDbm, toMw } from "./decibel.js";
export { feetToM, mToFeet } from "./length.js";
export { feetInchesText, metresText } from "./length-text.js";
export { parseNumber } from "./parse-number.js";
export { sumPowersDbm } from "./power.js";
