import type {
  PlacedMargin,
  PlacedPair,
  PlannedPlace,
  SecondSystemCost,
  TransmitterPlace,
} from "../venue/index.js";
import type { PlacedSystem, PlaceReport, SystemPlacement } from "./place-report.js";
import { finite } from "./link-block.js";
import { surveyBlock } from "./survey-json.js";
import { verdictWord } from "./verdict-mark.js";

/** `stillband place --json`: numbers are not rounded, null comes with a reason. */
export function placeJson(report: PlaceReport): object {
  const { venue, crowd, survey, systems, grid, busyShareRatio, reliability, issues } = report;
  return {
    schema: "stillband/place@1",
    issues,
    venue: { name: venue.name, crowd, crowdFigures: venue.crowd, region: venue.region },
    setting: {
      ...grid,
      busyShareRatio,
      reliability,
      fadeLaw: report.fadeWords,
      pathModel: report.pathWords,
      accessPointCount: report.accessPointCount,
    },
    survey: surveyBlock(survey),
    systems: systems.map(systemBlock),
  };
}

function systemBlock({ name, placed, reason }: PlacedSystem): object {
  if (placed === null)
    return {
      system: name,
      channel: null,
      places: [],
      choice: null,
      grid: null,
      fields: [],
      pair: null,
      joint: null,
      reason,
    };
  const { plan } = placed;
  return {
    system: name,
    profile: plan.system.profile.name,
    channel: plan.channel,
    channelReason: plan.channel === null ? "hopping: judged at the median of its hop set" : null,
    frequencyMhz: plan.frequencyMhz,
    unscannedRooms: placed.unscannedRooms,
    places: plan.places.map(placeBlock),
    choice: plan.choice === null ? null : { from: plan.choice.from, ...pointBlock(plan.choice.place) },
    grid:
      plan.grid === null
        ? null
        : {
            triedCount: plan.grid.triedCount,
            keptOutCount: plan.grid.keptOutCount,
            antenna: plan.gridAntenna,
          },
    fields: placed.pictures.map(fieldBlock),
    pair: plan.pair === null ? null : pairBlock(plan.pair),
    joint: placed.joint === null ? null : jointBlock(placed.joint),
    jointReason: placed.jointReason,
    reason,
  };
}

function placeBlock({
  from,
  place,
  leastMarginDb,
  weakest,
  givesUpDb,
  breaks,
  margins,
}: PlannedPlace): object {
  return {
    from,
    ...pointBlock(place),
    antenna: place.antenna,
    ...marginBlock(leastMarginDb),
    weakest,
    givesUpDb,
    breaks,
    receivers: margins.map(receiverBlock),
  };
}

function pointBlock({ name, room, at, heightM }: TransmitterPlace): object {
  return { name, room, xM: at.x, yM: at.y, zM: at.z, heightM };
}

function receiverBlock({ receiver, workingMarginDb, inSight }: PlacedMargin): object {
  return { receiver, ...marginBlock(workingMarginDb), inSight };
}

function marginBlock(workingMarginDb: number): object {
  const isNull = workingMarginDb === -Infinity;
  return {
    workingMarginDb: isNull ? null : workingMarginDb,
    marginReason: isNull ? "no wanted signal: in an antenna's null" : null,
    verdict: verdictWord(workingMarginDb),
  };
}

/** Rows from the least y up; null outside the room, or where a null leaves no signal. */
function fieldBlock({ room, heightM, field }: SystemPlacement["pictures"][number]): object {
  const { from, stepM, columnCount, rowCount, leastMarginDb } = field;
  return {
    room: room.name,
    heightM,
    fromXM: from.x,
    fromYM: from.y,
    stepM,
    columnCount,
    rowCount,
    leastMarginDb: leastMarginDb.map((marginDb) => (marginDb === -Infinity ? null : marginDb)),
  };
}

function pairBlock({ places, receivers, leastMarginDb, margins }: PlacedPair): object {
  return {
    ...marginBlock(leastMarginDb),
    transmitters: places.map((place, index) => ({
      ...pointBlock(place),
      antenna: place.antenna,
      receivers: margins.filter(({ receiver }) => receivers[index]!.includes(receiver)).map(receiverBlock),
    })),
  };
}

function jointBlock(joint: SecondSystemCost): object {
  return { ...finite(joint), systems: joint.systems.map(finite) };
}
