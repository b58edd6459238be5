import { SCAN_CSV_COLUMNS } from "../scan/index.js";
import { WALK_COLUMNS } from "../commissioning/index.js";
import type { VenueOptions } from "./venue-options.js";
import { CONFIDENCE, FLOOR } from "./reading-specs.js";
import { badOption, filledWord, numberWord } from "./words.js";

/** The options of `verify`; `--crowd`, `--place` and `--time` fill the scans named after them. */
export interface VerifyOptions extends VenueOptions {
  readonly readings?: string;
  readonly scan?: readonly string[];
  readonly since?: string;
  readonly house?: string;
  readonly notHeardBelow?: string;
  readonly confidence?: string;
}

/** What the options say in words and figures. */
export interface VerifyFigures {
  readonly readingsPath: string | null;
  readonly planPath: string | null;
  /** dBm; null: not said. */
  readonly floorDbm: number | null;
  readonly confidenceRatio: number;
  /** `--map` of the readings' columns, and of the scans'. */
  readonly maps: { readonly readings: readonly string[]; readonly scans: readonly string[] };
}

/** @throws {CliError} exit 64 for a word that can't be read, or where there is nothing to verify by */
export function verifyFigures(options: VerifyOptions): VerifyFigures {
  const { readings, scan = [], since, notHeardBelow, confidence } = options;
  if (readings === undefined && since === undefined && scan.length === 0)
    throw badOption(
      "verify",
      "readings, a fresh scan or an earlier plan to verify by",
      "none of them",
      "venue.yaml --readings readings.csv --scan after.csv",
    );
  return {
    readingsPath:
      readings === undefined ? null : filledWord("--readings", readings, "a file's name", "readings.csv"),
    planPath: since === undefined ? null : filledWord("--since", since, "a file's name", "plan.json"),
    floorDbm: notHeardBelow === undefined ? null : numberWord("--not-heard-below", notHeardBelow, FLOOR),
    confidenceRatio: confidence === undefined ? 0.95 : numberWord("--confidence", confidence, CONFIDENCE),
    maps: mapsOf(options.map ?? []),
  };
}

/** A field that both have goes to both. */
function mapsOf(map: readonly string[]): VerifyFigures["maps"] {
  const names = (text: string, columns: readonly string[]): boolean =>
    columns.includes(
      text
        .slice(0, Math.max(0, text.indexOf("=")))
        .trim()
        .toLowerCase(),
    );
  const unknown = map.find((text) => !names(text, SCAN_CSV_COLUMNS) && !names(text, WALK_COLUMNS));
  if (unknown !== undefined)
    throw badOption(
      "--map",
      `FIELD=HEADER with a field of readings (${WALK_COLUMNS.join(", ")}) or scans (${SCAN_CSV_COLUMNS.join(", ")})`,
      unknown,
      'received_dbm="Level"',
    );
  return {
    readings: map.filter((text) => names(text, WALK_COLUMNS)),
    scans: map.filter((text) => names(text, SCAN_CSV_COLUMNS)),
  };
}
