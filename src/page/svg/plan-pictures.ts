import { printable } from "../../issues/index.js";
import {
  antennaInBrief,
  floorTitle,
  keptResiduals,
  linkFloors,
  placedFloor,
  placeName,
  receiverHopModel,
  roomBandModel,
} from "../../report/index.js";
import type { PlanReport } from "../../report/index.js";
import type { Picture } from "../picture.js";
import { bandSvg } from "./band-svg.js";
import { busySvg } from "./busy-svg.js";
import { hopSvg } from "./hop-svg.js";
import { marginSvg } from "./margin-svg.js";
import { pictureNames } from "./picture-names.js";
import { planSvg } from "./plan-svg.js";
import { residualSvg } from "./residual-svg.js";
import { roomsSvg } from "./rooms-svg.js";
import { spectrogramSvg } from "./spectrogram-svg.js";

type Namer = ReturnType<typeof pictureNames>;

/**
 * Every picture of a plan: rooms side by side, the band, swept power, busy time, margin by distance, plans of the
 * rooms as planned and with the places for a transmitter, hop sets, residuals. What there is nothing to draw of is
 * left out.
 */
export function planPictures(report: PlanReport): Picture[] {
  const nameOf = pictureNames();
  return [
    ...roomsPicture(report, nameOf),
    ...bandPictures(report, nameOf),
    ...linkPictures(report, nameOf),
    ...placePictures(report, nameOf),
    ...hopPictures(report, nameOf),
    ...surveyPictures(report, nameOf),
    ...fitPictures(report, nameOf),
  ];
}

function roomsPicture({ rooms }: PlanReport, nameOf: Namer): Picture[] {
  if (rooms.rooms.length === 0) return [];
  const title = "Rooms side by side: what the weakest receiver of each has to spare";
  return [roomsSvg(rooms.rooms, { name: nameOf("rooms"), title })];
}

function bandPictures({ bands }: PlanReport, nameOf: Namer): Picture[] {
  return bands
    .filter(({ band }) => band.aboveNoiseDb.length > 0)
    .map((one) => {
      const title = `The band in ${short(one.room)}: what reaches ${short(one.receiver)}, its weakest receiver`;
      return bandSvg(roomBandModel(one), { name: nameOf("band", ...distinct(one.room, one.system)), title });
    });
}

/** The margin by distance of each system, and its rooms from above. */
function linkPictures({ links, curves }: PlanReport, nameOf: Namer): Picture[] {
  return links.systems.flatMap((one): Picture[] => {
    const { name } = one.system;
    const numbers = new Map(one.receivers.map(({ receiver }, index) => [receiver.name, String(index + 1)]));
    const margins = curves
      .filter(({ system }) => system === name)
      .map((curve) =>
        marginSvg(curve, (receiver) => numbers.get(receiver) ?? "", {
          name: nameOf("margin", name),
          title: `System ${short(name)}: margin by distance, receivers by number`,
        }),
      );
    const floors = linkFloors(links.venue, one).map((floor) =>
      planSvg(floor, {
        name: nameOf("floor", ...distinct(floor.room.name, name)),
        title: `${floorTitle(floor.room)}: system ${short(name)} as planned`,
        margins: "Working margin as planned, the weakest first",
      }),
    );
    return [...margins, ...floors];
  });
}

function placePictures({ place }: PlanReport, nameOf: Namer): Picture[] {
  return place.systems.flatMap(({ name, placed }) =>
    (placed?.pictures ?? []).map((picture) => {
      const { choice, gridAntenna } = placed!.plan;
      const up = `${picture.heightM.toFixed(1)} m up, ${antennaInBrief(gridAntenna)}`;
      return planSvg(placedFloor(place.venue.walls, placed!, picture), {
        name: nameOf("places", ...distinct(picture.room.name, name)),
        title: `${floorTitle(picture.room)}: where the transmitter of system ${short(name)} could stand, ${up}`,
        margins:
          choice === null
            ? "No place was chosen"
            : `Receivers: to spare from ${placeName(choice)}; places: at the weakest`,
      });
    }),
  );
}

/** Of each hopping system, at its weakest receiver. */
function hopPictures({ links }: PlanReport, nameOf: Namer): Picture[] {
  return links.systems.flatMap(({ system, receivers }) => {
    const weakest = receivers[0];
    if (system.profile.hopping === null || weakest === undefined) return [];
    const title = `System ${short(system.name)}: its hop frequencies at ${short(weakest.receiver.name)}, the weakest receiver`;
    return [hopSvg(receiverHopModel(system, weakest), { name: nameOf("hop", system.name), title })];
  });
}

/** Busy time for each way of listening; the sweeps, which are the same for all, once. */
function surveyPictures({ surveys }: PlanReport, nameOf: Namer): Picture[] {
  const busy = surveys
    .filter(({ occupancy }) => occupancy.some(({ busyRatio }) => busyRatio !== null))
    .map(({ occupancy, profileName }) =>
      busySvg(occupancy, {
        name: nameOf("busy"),
        title: `Share of time in which a ${short(profileName)} receiver at 20 m (66 ft) would be spoilt`,
      }),
    );
  const first = surveys[0];
  const swept = (first?.spectrograms ?? [])
    .filter(({ relative, rows }) => !relative && rows.length > 0)
    .map((one) =>
      spectrogramSvg(one, first!.thresholdDbm, {
        name: nameOf("spectrogram", one.place, one.crowd ?? ""),
        title: `Power by time and frequency: ${one.place === "" ? "place not named" : short(one.place)}`,
      }),
    );
  return [...busy, ...swept];
}

function fitPictures({ fits }: PlanReport, nameOf: Namer): Picture[] {
  return fits
    .filter(({ residuals }) => residuals.length > 0)
    .map((fit) =>
      residualSvg(keptResiduals(fit), {
        name: nameOf("residuals", fit.room),
        title: `${short(fit.room)}: readings against the path model fitted on site`,
      }),
    );
}

function short(name: string): string {
  return printable(name, 30);
}

/** A room and a system of one name are named once. */
function distinct(room: string, system: string): string[] {
  return room === system ? [room] : [room, system];
}
