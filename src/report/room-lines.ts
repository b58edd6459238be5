import { glanceLine } from "./link-lines.js";
import { lossPercent, sharePercent } from "./number-format.js";
import type { RoomReport, RoomsReport } from "./rooms-report.js";
import { fallbackWords, limitsWords, markedDb, onWords, shortName } from "./rooms-words.js";

/** One room with one system's receivers in it, in five lines. */
export function roomLines(room: RoomReport, report: RoomsReport): string[] {
  const trust =
    room.evidence === null
      ? "none: the room was not scanned"
      : `${room.evidence.grade}; next look: ${room.evidence.next}`;
  const planned = report.plan.systems.find(({ system }) => system.name === room.system);
  if (planned === undefined) return [glanceLine("Evidence", trust)];
  return [
    glanceLine("Use", `${onWords(planned)}; ${fallbackWords(planned)}`),
    glanceLine("Jointly", jointWords(room)),
    glanceLine("Alone", aloneWords(room)),
    glanceLine("Air", airWords(room, report)),
    glanceLine("Evidence", trust),
  ];
}

/** The title of a room's lines. */
export function roomTitle({ room, system, receiverCount, reason }: RoomReport): string {
  if (system === null) return `${shortName(room)}: ${reason}`;
  const count = `${receiverCount} ${receiverCount === 1 ? "receiver" : "receivers"}`;
  const words = `${shortName(room)}: ${count} of system ${shortName(system)}`;
  return reason === null ? words : `${words}, not planned: ${reason}`;
}

function jointWords({ joint }: RoomReport): string {
  if (joint === null) return "x no signal at any receiver here: in an antenna's null";
  const { workingMarginDb, receiver, limit } = joint;
  return `${markedDb(workingMarginDb)} at ${shortName(receiver)}; ${limitsWords(limit)} limits it`;
}

function aloneWords({ aloneChannel, alone }: RoomReport): string {
  const margins = alone.map(({ crowd, weakest }) =>
    weakest === null
      ? `${crowd} not scanned`
      : `${crowd} ${markedDb(weakest.workingMarginDb)} at ${shortName(weakest.receiver)}`,
  );
  return `${aloneChannel === null ? "hopping" : `radio ch ${aloneChannel}`}: ${margins.join(", ")}`;
}

/** Clear air and frames lost of the weakest receiver in the plan. */
function airWords({ room, joint, alone }: RoomReport, { crowd }: RoomsReport): string {
  if (joint === null) return "none to state";
  const { typical, edge } = joint.frames;
  const unscanned = alone.find((one) => one.crowd === crowd)?.weakest === null;
  const blind = unscanned ? `; ${shortName(room)} not scanned ${crowd}` : "";
  return `there: clear ${sharePercent(joint.clearAirRatio)}, frames lost ${lossPercent(typical.lossRatio)}, at edge ${lossPercent(edge.lossRatio)}${blind}`;
}
