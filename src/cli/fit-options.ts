import { feetToM } from "../units/index.js";
import { WALK_COLUMNS } from "../commissioning/index.js";
import type { Vector3 } from "../propagation/index.js";
import type { LengthUnit } from "../report/index.js";
import type { CommonOptions } from "./context.js";
import type { RadioOptions } from "./load-profile.js";
import { CONFIDENCE, FLOOR } from "./reading-specs.js";
import { badOption, numberWord, plainNumber } from "./words.js";
import type { NumberSpec } from "./words.js";

/** The options of a walk test. */
export interface FitOptions extends CommonOptions, RadioOptions {
  readonly frequency?: string;
  readonly notHeardBelow?: string;
  readonly transmitter?: string;
  readonly transmitterAt?: string;
  readonly venue?: string;
  readonly ignoreLine?: readonly string[];
  /** False for --without-walls. */
  readonly withoutWalls?: boolean;
  readonly confidence?: string;
  readonly model?: string;
}

/** What the options say in figures. */
export interface FitFigures {
  /** MHz; null: not said. */
  readonly frequencyMhz: number | null;
  /** dBm; null: not said. */
  readonly floorDbm: number | null;
  readonly confidenceRatio: number;
  /** Where the one transmitter stands, m; null: not said. */
  readonly transmitterAt: Vector3 | null;
  /** Lines of readings to leave out. */
  readonly ignoredLines: readonly number[];
}

const FREQUENCY: NumberSpec = {
  lowest: 2400,
  highest: 2500,
  expected: "MHz from 2400 to 2500",
  example: "2442",
};

/** @throws {CliError} exit 64 for a word that can't be read */
export function fitFigures(options: FitOptions, unit: LengthUnit): FitFigures {
  const { frequency, notHeardBelow, confidence, transmitterAt, ignoreLine = [] } = options;
  return {
    frequencyMhz: frequency === undefined ? null : numberWord("--frequency", frequency, FREQUENCY),
    floorDbm: notHeardBelow === undefined ? null : numberWord("--not-heard-below", notHeardBelow, FLOOR),
    confidenceRatio: confidence === undefined ? 0.95 : numberWord("--confidence", confidence, CONFIDENCE),
    transmitterAt: transmitterAt === undefined ? null : placeWord("--transmitter-at", transmitterAt, unit),
    ignoredLines: ignoreLine.flatMap((words) => words.split(",")).map(lineWord),
  };
}

/** `x,y,z` in the unit of the command; z may be left out where the readings have none. */
function placeWord(flag: string, text: string, unit: LengthUnit): Vector3 {
  const numbers = text.split(",").map(plainNumber);
  if (numbers.length < 2 || numbers.length > 3 || numbers.some(Number.isNaN))
    throw badOption(flag, `X,Y,Z of the transmitter in ${unit}`, text, "2.5,13,5.6");
  const [x, y, z] = numbers.map((each) => (unit === "m" ? each : feetToM(each)));
  return { x: x!, y: y!, z: z ?? 0 };
}

function lineWord(text: string): number {
  const line = plainNumber(text);
  if (Number.isInteger(line) && line > 0) return line;
  throw badOption("--ignore-line", "a line of the readings' file", text, "14");
}

/**
 * What `--map field="Header"` says of the columns of the readings.
 * @throws {CliError} exit 64 where it is no such pair
 */
export function readingColumns({ map = [] }: CommonOptions): Record<string, string> {
  return Object.fromEntries(
    map.map((text) => {
      const at = text.indexOf("=");
      const field = text.slice(0, Math.max(0, at)).trim().toLowerCase();
      const header = text
        .slice(at + 1)
        .trim()
        .replace(/^"(.*)"$/s, "$1");
      if (!WALK_COLUMNS.some((column) => column === field) || header === "") {
        const expected = `FIELD=HEADER with a field among ${WALK_COLUMNS.join(", ")}`;
        throw badOption("--map", expected, text, 'received_dbm="Level"');
      }
      return [field, header];
    }),
  );
}
