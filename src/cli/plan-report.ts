import { isPathModelRecord, planRecord } from "../commissioning/index.js";
import type { PlanInput } from "../commissioning/index.js";
import type { PlanReport, RoomFit, RoomsReport, VenueLinkReport } from "../report/index.js";
import { linksOnPlan } from "../venue/index.js";
import type { ChosenChannels, Venue } from "../venue/index.js";
import { hangReport } from "./hang-report.js";
import { linkReport } from "./link-report.js";
import { patchReport } from "./patch-report.js";
import { placeReport } from "./place-report.js";
import type { PlaceAsked } from "./place-report.js";
import { planAssumptions } from "./plan-assumptions.js";
import { planBands } from "./plan-bands.js";
import { planCurves } from "./plan-curves.js";
import { plannedReceiver, plannedSystems } from "./planned-record.js";
import { roomsReport } from "./rooms-report.js";
import { surveyReport } from "./survey-report.js";
import type { VenueJob } from "./venue-options.js";
import type { VenueScene } from "./venue-scene.js";

/** What a plan's sheets say of themselves, and whom they may show. */
export interface PlanSetting {
  readonly program: string;
  /** ISO 8601; null: none is printed. */
  readonly madeAt: string | null;
  readonly revision: string | null;
  readonly showsNames: boolean;
  readonly inputs: readonly PlanInput[];
}

/**
 * The whole job of a venue. Nothing in it hangs on a clock: the joint search ends by its count of steps.
 * @param scenes by system, at least one
 */
export function planReport(
  job: VenueJob,
  scenes: ReadonlyMap<string, VenueScene>,
  setting: PlanSetting,
): PlanReport {
  const [scene] = scenes.values();
  const rooms = roomsReport(job, scenes, scene!, null);
  const links = linksReport(job, scenes, scene!, rooms);
  const { crowd, loaded } = job;
  const own = { ...loaded, venue: scene!.venue, issues: [] };
  const channels = chosenChannels(rooms);
  const hasLuminaires = own.venue.luminaires.length > 0;
  const pairs = scene!.venue.systems.map((system) => [system, scenes.get(system.name)!] as const);
  const siteOf = (system: string) => scenes.get(system)!.siteWith(crowd);
  const hang = hasLuminaires ? hangReport(own, { channels }, {}, CREW_SHEETS) : null;
  return {
    record: planRecord({
      program: setting.program,
      madeAt: setting.madeAt,
      inputs: setting.inputs,
      assumptions: planAssumptions(rooms),
      systems: plannedSystems(rooms),
      receivers: [...links.forecasts.values()].map(plannedReceiver),
    }),
    revision: setting.revision,
    rooms,
    links,
    place: placeReport(job, pairs, pairs, placesAsked(rooms), scene!.venue.units),
    surveys: surveysOf(scenes),
    patch: hasLuminaires ? patchReport(own, { channels }, {}) : null,
    hang,
    bands: planBands(job, scenes, rooms, links),
    curves: planCurves(links.systems, siteOf),
    fits: fitsOf(scene!.venue),
    showsNames: setting.showsNames,
    issues: [...scene!.issues, ...(hang?.issues ?? [])],
  };
}

const CREW_SHEETS = ["hang", "circuits", "order", "checks", "trouble"] as const;

/** A place that leaves so much at every receiver is not searched for a better one, dB: sound. */
const HOLDS_DB = 6;

/** Where transmitters might go, on the planned channels: the grid for systems that are thin, failing or not placed. */
function placesAsked({ plan }: RoomsReport): PlaceAsked {
  return {
    ...{ stepM: GRID_M, heightM: 3, among: "both", pictureColumnCount: PICTURE_COLUMNS },
    settled: {
      channelOf: new Map(
        plan.systems.flatMap(({ system, channel }) => (channel === null ? [] : [[system.name, channel]])),
      ),
      holding: new Set(
        plan.systems
          .filter(
            ({ isCandidate, workingMarginDb, lostReceivers }) =>
              !isCandidate && workingMarginDb >= HOLDS_DB && lostReceivers.length === 0,
          )
          .map(({ system }) => system.name),
      ),
    },
  };
}

/** Of the grid of places, m: as `place` has it unless told otherwise. */
const GRID_M = 0.5;
/** Columns over a room's length: lines are drawn smoothly between them. */
const PICTURE_COLUMNS = 40;

/** Every receiver on the planned channels. */
function linksReport(
  job: VenueJob,
  scenes: ReadonlyMap<string, VenueScene>,
  scene: VenueScene,
  { plan, terms: { burstMs } }: RoomsReport,
): VenueLinkReport {
  const { crowd, terms } = job;
  const systems = linksOnPlan(scene.siteWith(crowd), plan.systems, {
    ...terms,
    survey: scene.roomsWith(crowd),
    surveyOf: ({ name }) => scenes.get(name)!.roomsWith(crowd),
    burstMs,
  });
  return linkReport(job, scene, systems, { receiver: null, burstMs, issues: [] });
}

/** The plan's channels for labels, checks and trouble cards. */
function chosenChannels({ plan }: RoomsReport): ChosenChannels[] {
  return plan.systems.flatMap(({ system, channel, fallback }) =>
    channel === null
      ? []
      : [
          {
            system: system.name,
            channel,
            ...(fallback.channel !== null && { fallbackChannel: fallback.channel }),
          },
        ],
  );
}

/** One for each way in which the radios listen. */
function surveysOf(scenes: ReadonlyMap<string, VenueScene>): PlanReport["surveys"] {
  return [...new Set(scenes.values())]
    .filter(({ venue }) => venue.scans.length > 0)
    .map((scene) => {
      const [name] = [...scenes].find(([, one]) => one === scene)!;
      const { profile } = scene.venue.systems.find((system) => system.name === name)!;
      return surveyReport(scene.imports, scene.shaped, profile, undefined, scene.survey);
    });
}

/** Rooms whose model's file has kept what the fit left over. */
function fitsOf({ rooms }: Venue): RoomFit[] {
  return rooms.flatMap(({ name, pathModel }) => {
    const residuals = pathModel !== null && isPathModelRecord(pathModel) ? pathModel.residuals : undefined;
    return residuals === undefined ? [] : [{ room: name, residuals }];
  });
}
