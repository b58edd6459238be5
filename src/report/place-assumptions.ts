import { mToFeet } from "../units/index.js";
import { radioLine } from "./assumptions.js";
import { crowdLine } from "./crowd-line.js";
import { exactPercent, fixed } from "./number-format.js";
import type { LengthUnit } from "./pen.js";
import type { PlaceReport } from "./place-report.js";

/** What a placement rests on, one statement a line. */
export function placeAssumptions(report: PlaceReport, unit: LengthUnit): string[] {
  const { venue, systems, busyShareRatio, reliability, fadeWords, pathWords } = report;
  const profiles = new Map(
    venue.systems
      .filter(({ name }) => systems.some((system) => system.name === name))
      .map(({ profile }) => [radioLine(profile), profile]),
  );
  return [
    ...profiles.keys(),
    "A place is worth its smallest working margin over the system's receivers: walls at their angle, antenna patterns, canopy, audience, fading and the interference at each receiver counted.",
    `Interference: the level exceeded ${exactPercent(busyShareRatio)} of the time, from the scans of each receiver's room; it doesn't depend on where our transmitter stands. Our other systems are left out: stillband rooms counts them.`,
    "What is planned stays, and what the file names is taken, where it is ample or a better place gains less than 1 dB.",
    "The channel is the venue file's; else the one on which the loudest interference at any receiver is least. All places are compared on it; stillband rooms settles the channels.",
    gridLine(report, unit),
    crowdLine(venue.crowd, report.crowd),
    `Path: ${pathWords} unless a room names its own. Fading for ${exactPercent(reliability)} of positions: ${fadeWords}; Rayleigh where walls and floors take 3 dB or more (or as in_sight says).`,
    venue.region === null
      ? "Band edges 2400–2483.5 MHz; transmit power was not judged (--region, or region in the venue file)."
      : `Region ${venue.region}: channels inside its band; a power of the project's own is held to its rule with the greatest gain of a system's antennas. Local rules decide.`,
  ];
}

function gridLine({ grid, accessPointCount }: PlaceReport, unit: LengthUnit): string {
  const length = (lengthM: number): string =>
    `${fixed(unit === "ft" ? mToFeet(lengthM) : lengthM, 2).replace(/\.?0+$/, "")} ${unit}`;
  const radios = `${accessPointCount} Wi-Fi ${accessPointCount === 1 ? "radio" : "radios"} whose place the venue file gives`;
  return `Grid: every ${length(grid.stepM)}, antenna ${length(grid.heightM)} up; it keeps ${length(3)} from the ${radios}, ${length(2)} from the other systems' transmitters, ${length(0.5)} from receivers, and isn't straight under a fixture (common practice, no source). A point of the grid is air until somebody finds what carries an antenna there.`;
}
