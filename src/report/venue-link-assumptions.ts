import { printable } from "../issues/index.js";
import { radioLine } from "./assumptions.js";
import { crowdLine } from "./crowd-line.js";
import { exactPercent } from "./number-format.js";
import type { LengthUnit } from "./pen.js";
import { planLength } from "./place-words.js";
import type { VenueLinkReport } from "./venue-link-report.js";

/** What a venue's links rest on, one statement a line. */
export function venueLinkAssumptions(report: VenueLinkReport, unit: LengthUnit): string[] {
  const { venue, systems, terms, words } = report;
  const share = exactPercent(terms.reliability);
  return [
    ...new Set(systems.map(({ system }) => radioLine(system.profile))),
    `Path: ${words.path} unless a room names its own; walls by ITU-R P.2040 at their angle, or the dB that the file gives; antennas by their patterns. The path model's shadowing is not in the allowance.`,
    `Fading for ${share} of positions: ${words.fade}; Rayleigh where walls and floors take 3 dB or more (or as in_sight says).`,
    `Interference: the level exceeded ${exactPercent(terms.busyShareRatio)} of the time, from the scans of each receiver's room, people's handsets and the emitters of the venue file; worst legal skirts of the Wi-Fi masks; scanning antenna 0 dBi. Our other systems are left out: stillband rooms counts them.`,
    ...unscanned(report),
    ...everywhere(report),
    crowdLine(venue.crowd, report.crowd),
    `Handsets are on the house's Wi-Fi channels: ${report.handsetChannels.join(", ")}.`,
    `Frame loss: Wi-Fi bursts ${terms.burstMs} ms (assumed); "at edge" is the edge of those ${share}. A lost frame shows only while the look is changing.`,
    `Mends are each worked out again for that receiver alone: the transmitter at ${["3", "4.5", "6"].map((heightM) => planLength(Number(heightM), unit)).join(", ")} ${unit}, the other channels, a dipole or an 8 dBi panel aimed at it, the candidates (else the middle of the receivers) as a second transmitter on this channel, the antenna out of the canopy.`,
    report.reviews.size === 0
      ? "Band edges 2400–2483.5 MHz; transmit power was not judged (--region, or region in the venue file)."
      : "Power and band edges: see Regulation.",
    "Radio channel numbers are the profile's own; Wi-Fi rules for 12 and 13 do not apply to them.",
  ];
}

function unscanned({ systems, scannedRooms, roomlessCount }: VenueLinkReport): string[] {
  const used = new Set(systems.flatMap(({ receivers }) => receivers.map(({ receiver }) => receiver.room)));
  const rooms = [...used].filter((room) => !scannedRooms.includes(room)).map((room) => printable(room, 20));
  return [
    ...(rooms.length === 0
      ? []
      : [`NOT SCANNED with this crowd or a smaller one, so no Wi-Fi counts there: ${rooms.join(", ")}.`]),
    ...(roomlessCount === 0
      ? []
      : [
          `${roomlessCount} readings name a place that no room of the venue file holds; they count for none.`,
        ]),
  ];
}

/** Devices whose frequency nobody knows spoil every channel alike. */
function everywhere({ venue, unplacedEmitters }: VenueLinkReport): string[] {
  if (unplacedEmitters.length === 0 || venue.emitters.length === 0) return [];
  return [
    `Taken as on every frequency at once, as the venue file doesn't give theirs (centre_mhz): ${unplacedEmitters.map((name) => printable(name, 30)).join(", ")}.`,
  ];
}
