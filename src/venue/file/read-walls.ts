import type { Opening, Wall } from "../venue-room.js";
import { SAME_PLACE_M } from "../outline-fault.js";
import { buildOf } from "./build-field.js";
import type { ValueOf } from "./field.js";
import { inUnit, lengthWords } from "./field-length.js";
import type { Entry } from "./field-list.js";
import type { FileSpot } from "./file-spot.js";
import type { openingField, wallField } from "./room-fields.js";
import { storeyOf, toldTwice } from "./venue-scope.js";
import type { VenueScope } from "./venue-scope.js";

type WallPart = ValueOf<typeof wallField>;
type OpeningPart = ValueOf<typeof openingField>;

/** A figure written in feet comes to its end by a hair more or less. */
const SLACK_M = 1e-6;

/** Walls in the file's order; one without a name is called by its number. */
export function readWalls(given: readonly Entry<WallPart>[], scope: VenueScope): readonly Wall[] {
  toldTwice(
    given.flatMap(({ value, spot }) => (value.name === null ? [] : [{ value: { name: value.name }, spot }])),
    "wall",
  );
  return given.flatMap(({ value, spot }, index) => {
    const storey = storeyOf(value.storey, spot, scope);
    const build = buildOf(value, spot);
    const lengthM = Math.hypot(value.to.x - value.from.x, value.to.y - value.from.y);
    if (lengthM <= SAME_PLACE_M)
      spot.key("to").error("the same point", "another point than from", "contradiction");
    const bottomM = value.bottom ?? 0;
    if (value.top !== null && value.top <= bottomM) notAbove(value.top, bottomM, spot.key("top"));
    const openings = readOpenings(value, lengthM);
    if (storey === undefined || build === undefined) return [];
    const name = value.name ?? `wall ${index + 1}`;
    return {
      name,
      storey: storey.name,
      from: value.from,
      to: value.to,
      bottomM,
      topM: value.top,
      build,
      openings,
    };
  });
}

function readOpenings(wall: WallPart, lengthM: number): readonly Opening[] {
  const sound: Opening[] = [];
  for (const { value, spot } of wall.openings ?? []) {
    const bottomM = value.bottom ?? wall.bottom ?? 0;
    heldToWall(value, bottomM, wall, lengthM, spot);
    const opening = { fromM: value.from, toM: value.to, bottomM, topM: value.top };
    const other = sound.findIndex((each) => overlaps(each, opening));
    if (other >= 0)
      spot.error(`overlaps openings[${other}]`, "openings of a wall that do not overlap", "contradiction");
    const build = openingBuild(value, spot);
    if (build !== undefined) sound.push({ ...opening, build });
  }
  return sound;
}

function openingBuild(value: OpeningPart, spot: FileSpot): Opening["build"] | undefined {
  if (value.open !== true) return buildOf(value, spot, ["open: true"]);
  const filled = value.material ?? value.layers ?? value.loss_db;
  if (filled === null) return { lossDb: 0 };
  return spot.key("open").error(true, "either open: true or what fills it", "contradiction");
}

function heldToWall(
  { from, to, top }: OpeningPart,
  bottomM: number,
  wall: WallPart,
  lengthM: number,
  spot: FileSpot,
): void {
  if (to <= from)
    spot.key("to").error(inUnit(to, spot), `more than from, ${inUnit(from, spot)}`, "contradiction");
  if (to > lengthM + SLACK_M)
    spot
      .key("to")
      .error(inUnit(to, spot), `at most the wall's length, ${lengthWords(lengthM, spot)}`, "contradiction");
  if (top <= bottomM) notAbove(top, bottomM, spot.key("top"));
  const wallBottomM = wall.bottom ?? 0;
  if (bottomM < wallBottomM - SLACK_M)
    spot
      .key("bottom")
      .error(
        inUnit(bottomM, spot),
        `at least the wall's bottom, ${lengthWords(wallBottomM, spot)}`,
        "contradiction",
      );
  if (wall.top !== null && top > wall.top + SLACK_M)
    spot
      .key("top")
      .error(inUnit(top, spot), `at most the wall's top, ${lengthWords(wall.top, spot)}`, "contradiction");
}

function notAbove(topM: number, bottomM: number, spot: FileSpot): void {
  spot.error(inUnit(topM, spot), `a top above the bottom, ${lengthWords(bottomM, spot)}`, "contradiction");
}

type Frame = Omit<Opening, "build">;

function overlaps(a: Frame, b: Frame): boolean {
  const across = Math.min(a.toM, b.toM) - Math.max(a.fromM, b.fromM);
  const up = Math.min(a.topM, b.topM) - Math.max(a.bottomM, b.bottomM);
  return across > SLACK_M && up > SLACK_M;
}
