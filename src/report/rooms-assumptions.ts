import { printable } from "../issues/index.js";
import { radioLine } from "./assumptions.js";
import { crowdLine } from "./crowd-line.js";
import { exactPercent } from "./number-format.js";
import type { RoomsReport } from "./rooms-report.js";

/** What the joint plan rests on, one statement a line. */
export function roomsAssumptions(report: RoomsReport): string[] {
  const { venue, plan, terms, words, handsetChannels, reviews } = report;
  const hops = plan.systems.some(({ isHopping }) => isHopping);
  const share = exactPercent(terms.reliability);
  return [
    ...new Set(plan.systems.map(({ system }) => radioLine(system.profile))),
    `Interference: the level exceeded ${exactPercent(terms.busyShareRatio)} of the time, from the scans of each receiver's room, people's handsets and the emitters of the venue file; worst legal skirts of the Wi-Fi masks; scanning antenna 0 dBi.`,
    "Another system counts whole, as if it were always on the air: its power through walls, audience and canopy, by its emission shape and the receiver's selectivity (the profile's); an antenna's null or crossed polarisation takes at most 20 dB off it (echoes; assumed).",
    ...(hops
      ? [
          "A hopping system is no choice of the plan: its power is spread evenly over its hop frequencies; its own margin is each receiver's median over them.",
        ]
      : []),
    `Path: ${words.path} unless a room names its own. Fading for ${share} of positions: ${words.fade}; Rayleigh where walls and floors take 3 dB or more (or as in_sight says).`,
    ...unscanned(report),
    crowdLine(venue.crowd, report.crowd),
    `Handsets are on the house's Wi-Fi channels: ${handsetChannels.join(", ")}.`,
    `Frame loss: Wi-Fi bursts ${terms.burstMs} ms (assumed); "at edge" is the edge of those ${share}. A lost frame shows only while the look is changing.`,
    reviews.size === 0
      ? "Band edges 2400–2483.5 MHz; transmit power was not judged (--region, or region in the venue file)."
      : "Power and band edges: see Regulation.",
    "Radio channel numbers are the profile's own; Wi-Fi rules for 12 and 13 do not apply to them.",
  ];
}

function unscanned({ rooms, roomlessCount, crowd }: RoomsReport): string[] {
  const names = new Set(
    rooms
      .filter(({ alone }) => alone.some((one) => one.crowd === crowd && one.weakest === null))
      .map(({ room }) => printable(room, 20)),
  );
  return [
    ...(names.size === 0
      ? []
      : [
          `NOT SCANNED with this crowd or a smaller one, so no Wi-Fi counts there: ${[...names].join(", ")}.`,
        ]),
    ...(roomlessCount === 0
      ? []
      : [
          `${roomlessCount} readings name a place that no room of the venue file holds; they count for none.`,
        ]),
  ];
}
