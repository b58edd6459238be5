import { indoorAbgRows } from "../propagation/index.js";
import type { IndoorPlace, IndoorSight, PathModel } from "../propagation/index.js";
import { nearestWord } from "../radio/index.js";
import { badOption, plainNumber } from "./words.js";

const EXPECTED =
  "free-space, indoor, indoor:N (10 to 60), indoor-abg:PLACE:SIGHT, log-distance:EXPONENT:LOSS_AT_1M[:SIGMA] or a file .json or .yaml";

/**
 * `free-space`, `indoor`, `indoor:N`, `indoor-abg:PLACE:SIGHT` (office, corridor, industrial; LoS or NLoS) or
 * `log-distance:EXPONENT:LOSS_AT_1M[:SIGMA]`.
 * @throws {CliError} exit 64 where it is none
 */
export function pathModelWord(flag: string, text: string): PathModel {
  const [kind, ...figures] = text.split(":");
  if (kind === "indoor-abg") return abgModel(flag, text, figures);
  const numbers = figures.map(plainNumber);
  const [first = NaN, second = NaN, sigmaDb] = numbers;
  if (kind === "free-space" && numbers.length === 0) return { kind };
  if (kind === "indoor" && numbers.length === 0)
    return { kind, distancePowerCoefficient: 22, floorLossDb: 0 };
  if (kind === "indoor" && numbers.length === 1 && first >= 10 && first <= 60)
    return { kind, distancePowerCoefficient: first, floorLossDb: 0 };
  if (kind === "log-distance" && first >= 1 && first <= 6 && second > 0) {
    const model = { kind, exponent: first, referenceLossDb: second } as const;
    if (numbers.length === 2) return model;
    if (numbers.length === 3 && sigmaDb! >= 0 && sigmaDb! <= 30) return { ...model, sigmaDb: sigmaDb! };
  }
  throw badOption(flag, EXPECTED, text, "log-distance:2.2:40.2");
}

function abgModel(flag: string, text: string, words: readonly string[]): PathModel {
  const places = Object.keys(indoorAbgRows) as IndoorPlace[];
  const sights: readonly IndoorSight[] = ["LoS", "NLoS"];
  const [placeText = "", sightText = ""] = words;
  const place = places.find((name) => name === placeText.toLowerCase());
  const sight = sights.find((name) => name.toLowerCase() === sightText.toLowerCase());
  if (words.length === 2 && place !== undefined && sight !== undefined)
    return { kind: "indoor-abg", place, sight };
  const near = place ?? nearestWord(placeText, places) ?? "office";
  throw badOption(
    flag,
    `indoor-abg:PLACE:SIGHT, a place among ${places.join(", ")} and LoS or NLoS`,
    text,
    `indoor-abg:${near}:${sight ?? "LoS"}`,
  );
}
