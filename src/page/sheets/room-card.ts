import { audienceWords, labelled, roomLines, roomTitle } from "../../report/index.js";
import type { RoomReport } from "../../report/index.js";
import { facts, markup } from "../html/markup.js";
import type { Content, Markup } from "../html/markup.js";
import { verdictTag } from "../html/verdict.js";
import type { PageParts } from "../page-parts.js";
import { derivationOf } from "./derivation.js";

type Line = readonly [label: Content, words: Content];

/** A room's answer: the verdict, then the lines that `rooms` prints of it, the reach and what the audience sees. */
export function roomCard(room: RoomReport, index: number, parts: PageParts): Markup {
  const lines = roomLines(room, parts.report.rooms).map(labelled);
  return markup`<section class="room">
<h4>${roomTitle(room)}</h4>
${answer(room, index, parts)}${facts([...lines, ...reachLines(room, parts), ...audienceLines(room, parts)])}${derivation(room, parts)}</section>
`;
}

function answer({ system, joint }: RoomReport, index: number, { report, figures }: PageParts): Content {
  if (system === null) return null;
  if (joint === null) return markup`<p class="answer">${verdictTag(-Infinity)}</p>\n`;
  const { workingMarginDb, receiver } = joint;
  const title = derivationOf(report.links, system, receiver);
  const exactly = figures.figure("dB", `/rooms/rooms/${String(index)}/joint/workingMarginDb`, { title });
  return markup`<p class="answer">${verdictTag(workingMarginDb)} <small>${exactly} to spare at ${receiver}, the weakest</small></p>
`;
}

/** For those who can't hover over a figure. */
function derivation({ system, joint }: RoomReport, { report }: PageParts): Content {
  if (system === null || joint === null) return null;
  const words = derivationOf(report.links, system, joint.receiver);
  return markup`<details><summary>How the figure came about</summary>\n<p>${joint.receiver}: ${words}.</p>\n</details>\n`;
}

/** How far it would reach against how far it must. */
function reachLines({ room, system }: RoomReport, { report, figures }: PageParts): Line[] {
  const at = report.curves.findIndex((curve) => curve.system === system);
  const curve = report.curves[at];
  if (curve === undefined) return [];
  const links = report.links.systems.find((one) => one.system.name === system);
  const here = new Set(
    (links?.receivers ?? [])
      .filter(({ receiver }) => receiver.room === room)
      .map(({ receiver }) => receiver.name),
  );
  const furthest = curve.receivers
    .map((one, index) => ({ ...one, index }))
    .filter(({ receiver }) => here.has(receiver))
    .sort((a, b) => b.distanceM - a.distanceM || a.index - b.index)[0];
  if (furthest === undefined) return [];
  const reach = figures.bothLengths("reach", `/curves/${String(at)}/reachM`, {
    none: "beyond 100 m: outside the model",
    title: `as at ${curve.receiver}, the weakest of system ${curve.system}: its gains, walls and interference`,
  });
  const far = figures.bothLengths(
    "distance",
    `/curves/${String(at)}/receivers/${String(furthest.index)}/distanceM`,
  );
  return [
    [
      "Reach",
      [
        reach,
        ", with what ",
        curve.receiver,
        " hears; the furthest here is ",
        furthest.receiver,
        " at ",
        far,
      ],
    ],
  ];
}

function audienceLines({ joint, system }: RoomReport, { report: { rooms } }: PageParts): Line[] {
  const planned = rooms.plan.systems.find((one) => one.system.name === system);
  if (joint === null || planned === undefined) return [];
  const { profile } = planned.system;
  const setting = { profile, reliability: rooms.terms.reliability, eventMinutes: rooms.venue.eventMinutes };
  const when = `${joint.receiver}, ${rooms.crowd === "full" ? "full house" : rooms.crowd}`;
  return [["Audience", audienceWords({ frames: joint.frames, looks: joint.looks, setting }, when)]];
}
