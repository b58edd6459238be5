import { jointStatements, roomsAssumptions } from "../../report/index.js";
import { list } from "../html/markup.js";
import type { Content } from "../html/markup.js";
import { otherPictures, pictureMarkup, picturesOf } from "../html/picture-markup.js";
import { part } from "../html/sheet.js";
import type { Sheet } from "../html/sheet.js";
import type { PageParts } from "../page-parts.js";
import { CLIENT_PICTURES } from "./client-sheet.js";
import { channelTables, couplingTable, jointTable } from "./channel-tables.js";
import { receiverPart } from "./receiver-tables.js";
import { placeTables } from "./place-tables.js";
import { sourceTables } from "./source-tables.js";

const PICTURES = ["margin", "curve", "places", "hops", "busy", "spectrogram", "fit"] as const;

/** The radio plan: channels, receivers, places, sources. */
export function radioSheet(parts: PageParts): Sheet {
  const { rooms, links } = parts.report;
  const pictures = [
    ...picturesOf(parts.pictures, PICTURES),
    ...otherPictures(parts.pictures, [...PICTURES, ...CLIENT_PICTURES]),
  ];
  return {
    id: "radio",
    title: "The radio plan",
    whom: "the lighting integrator",
    body: [
      rooms.plan.systems.length === 0
        ? null
        : part(
            "Radio channels, settled jointly",
            jointTable(parts),
            list(jointStatements(rooms)),
            couplings(parts),
          ),
      ...links.systems.map((one, index) => receiverPart(one, index, parts)),
      links.systems.some(({ receivers: [weakest] }) => (weakest?.channels.length ?? 0) > 1)
        ? part("Every radio channel, at each system's weakest receiver", channelTables(parts))
        : null,
      pictures.length === 0 ? null : part("In pictures", pictureMarkup(pictures)),
      part("Places for the transmitters", placeTables(parts)),
      parts.report.surveys.length === 0 ? null : part("What is on the air", sourceTables(parts)),
      part("Assumed", list(roomsAssumptions(rooms))),
    ],
  };
}

function couplings(parts: PageParts): Content {
  return parts.report.rooms.plan.couplings.length === 0 ? null : couplingTable(parts);
}
