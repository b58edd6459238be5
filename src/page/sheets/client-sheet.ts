import { labelled, roomsGlance, venueCautions } from "../../report/index.js";
import { facts, list, markup } from "../html/markup.js";
import { pictureMarkup, picturesOf } from "../html/picture-markup.js";
import { part } from "../html/sheet.js";
import type { Sheet } from "../html/sheet.js";
import { VERDICT_KEY } from "../html/verdict.js";
import type { PageParts } from "../page-parts.js";
import { roomCard } from "./room-card.js";

/** Pictures that the answer needs. */
export const CLIENT_PICTURES = ["rooms", "floor", "band"] as const;

/** The answer: the whole venue at a glance, then room by room, then in pictures. */
export function clientSheet(parts: PageParts): Sheet {
  const { rooms } = parts.report;
  const pictures = picturesOf(parts.pictures, CLIENT_PICTURES);
  return {
    id: "answer",
    title: "The answer",
    whom: "the client",
    body: [
      markup`<div class="glance">${facts(roomsGlance(rooms).map(labelled))}</div>\n`,
      part(
        "Room by room",
        markup`<div class="rooms">\n${rooms.rooms.map((room, index) => roomCard(room, index, parts))}</div>\n<p class="key">${VERDICT_KEY}</p>\n`,
      ),
      part("Cautions", list(venueCautions(rooms.venue))),
      pictures.length === 0 ? null : part("In pictures", pictureMarkup(pictures)),
    ],
  };
}
