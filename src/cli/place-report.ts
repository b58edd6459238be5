import { fadeLawWords, pathModelWords, referenceFadeLaw } from "../propagation/index.js";
import { PLAN_COLUMNS, planStepM } from "../report/index.js";
import type { FloorPicture, LengthUnit, PlacedSystem, PlaceReport } from "../report/index.js";
import {
  antennaHeightM,
  channelsInBand,
  marginField,
  planPlacement,
  sceneMemory,
  secondSystemCost,
} from "../venue/index.js";
import type { PlanPlacementOptions, VenueChannelOptions, RoomSurvey, Venue } from "../venue/index.js";
import type { VenueJob } from "./venue-options.js";
import type { VenueScene } from "./venue-scene.js";
import { placeKeepOuts } from "./place-keep-outs.js";
import type { SystemScene } from "./venue-systems.js";

/** What `place` is asked for. */
export interface PlaceAsked {
  readonly stepM: number;
  readonly heightM: number;
  readonly antenna?: PlanPlacementOptions["antenna"];
  readonly among: PlanPlacementOptions["among"];
  /** Columns of the floor pictures' fields; as a terminal's plan unless given. */
  readonly pictureColumnCount?: number;
  /** What a plan has settled already; not given: nothing. */
  readonly settled?: SettledPlan;
}

/** A plan whose channels stand: what a second transmitter would cost all systems is not worked out then. */
export interface SettledPlan {
  readonly channelOf: ReadonlyMap<string, number>;
  /** Systems whose place holds: the named places are told, no grid is searched. */
  readonly holding: ReadonlySet<string>;
}

/**
 * Everything that the report of `place` tells.
 * @param systems those to be placed, each with the scene for its radio
 * @param all every system of the venue in the same way
 * @param units of the reader: the fields have the steps that its pictures can show
 */
export function placeReport(
  job: VenueJob,
  systems: readonly SystemScene[],
  all: readonly SystemScene[],
  asked: PlaceAsked,
  units: LengthUnit,
): PlaceReport {
  const [, scene] = systems[0]!;
  const { crowd, terms } = job;
  const site = scene.siteWith(crowd);
  const surveys = new Map(all.map(([system, its]) => [system.name, its.roomsWith(crowd)]));
  const joint = new Map<VenueScene, JointTerms>();
  const jointIn = (its: VenueScene): JointTerms => {
    if (!joint.has(its)) joint.set(its, jointTerms(its.venue, surveys));
    return joint.get(its)!;
  };
  return {
    venue: scene.venue,
    crowd,
    survey: scene.survey,
    systems: systems.map(([system, its]) => placedSystem(job, [system, its], asked, units, jointIn(its))),
    grid: { stepM: asked.stepM, heightM: asked.heightM },
    accessPointCount: scene.sourcePlaces.size,
    busyShareRatio: terms.busyShareRatio ?? 0.01,
    reliability: terms.reliability ?? 0.99,
    fadeWords: fadeLawWords(terms.fadeLaw ?? referenceFadeLaw),
    pathWords: pathModelWords(site.pathModel),
    issues: scene.issues,
  };
}

const ALL_HOP = "no system of the venue has a channel to choose: all hop";
const NOT_COSTED = "left out of a plan; stillband place works it out";

type JointTerms = Pick<VenueChannelOptions, "known" | "memory" | "surveyOf">;

/** For the joint plans of one scene: a second system hears with the radio of the first. */
function jointTerms(venue: Venue, surveys: ReadonlyMap<string, ReadonlyMap<string, RoomSurvey>>): JointTerms {
  const byRadio = new Map(venue.systems.map(({ name, profile }) => [profile, surveys.get(name)!]));
  return { known: new Map(), memory: sceneMemory(), surveyOf: ({ profile }) => byRadio.get(profile)! };
}

function placedSystem(
  { crowd, terms }: VenueJob,
  [system, scene]: SystemScene,
  asked: PlaceAsked,
  units: LengthUnit,
  jointly: JointTerms,
): PlacedSystem {
  const { name } = system;
  const site = scene.siteWith(crowd);
  const options = { ...terms, survey: scene.roomsWith(crowd), memory: jointly.memory };
  const receivers = scene.venue.receivers.filter((receiver) => receiver.system === name);
  if (receivers.length === 0)
    return { name, placed: null, reason: "it has no receiver: give its fixtures x, y and a trim height" };
  if (channelsInBand(site, system).length === 0)
    return { name, placed: null, reason: "none of its radio channels lies inside the band" };
  const { settled } = asked;
  const plan = planPlacement(site, system, {
    ...{ ...options, ...asked, ...placeKeepOuts(scene, system) },
    ...(settled !== undefined && { channel: settled.channelOf.get(name) }),
    ...(settled?.holding.has(name) === true && { among: "candidates" }),
  });
  const pictures = [...new Set(receivers.map(({ room }) => room))].map((room) => floor(room));
  const unscannedRooms = pictures.map(({ room }) => room.name).filter((room) => !options.survey.has(room));
  const joint = settled === undefined ? secondSystemCost(site, plan, { ...options, ...jointly }) : null;
  const without = settled === undefined ? ALL_HOP : NOT_COSTED;
  const jointReason = joint !== null || plan.pair === null ? null : without;
  return { name, placed: { plan, pictures, unscannedRooms, joint, jointReason }, reason: null };

  function floor(roomName: string): FloorPicture {
    const room = scene.venue.rooms.find((one) => one.name === roomName)!;
    const heightM = antennaHeightM(room, asked.heightM);
    const stepM = planStepM(room.outline, { units, columnCount: asked.pictureColumnCount ?? PLAN_COLUMNS });
    const { setting, gridAntenna: antenna } = plan;
    const field = marginField(site, system, { ...options, room: roomName, stepM, heightM, antenna, setting });
    return { room, heightM, field };
  }
}
