import { printable } from "../issues/index.js";
import type { PlannedPlace } from "../venue/index.js";
import { glanceLine } from "./link-lines.js";
import type { LengthUnit } from "./pen.js";
import { breakInBrief } from "./place-breaks.js";
import { placeSteps } from "./place-steps.js";
import { placeName, placeWords, spareWords } from "./place-words.js";
import type { PlacedSystem, PlaceReport, SystemPlacement } from "./place-report.js";
import { columnsOf } from "./text-layout.js";
import { verdictWord } from "./verdict-mark.js";

type Line = readonly [label: string, words: string];

/** Where one system's transmitter goes, in at most eight lines of at most 80 columns. */
export function placeGlance(report: PlaceReport, system: PlacedSystem, unit: LengthUnit): string[] {
  const { name, placed, reason } = system;
  const lines: Line[] =
    placed === null
      ? [
          ["System", printable(name, 40)],
          ["Place", `none to tell: ${reason ?? ""}`],
        ]
      : [
          ["System", systemWords(report, name, placed)],
          ["Place", choiceWords(placed, unit)],
          ...plannedLine(placed),
          ...bestLine(placed, unit),
          ...pairLine(placed),
          ...placeSteps(placed),
          ["Trust", trustWords(report, placed)],
        ];
  return lines.map(([label, words]) => glanceLine(label, words));
}

const CROWD_WORDS = { empty: "room empty", part: "part of a house", full: "full house" } as const;

function systemWords({ crowd }: PlaceReport, name: string, { plan }: SystemPlacement): string {
  const count = plan.setting.receivers.length;
  const boxes = `${count} ${count === 1 ? "receiver" : "receivers"}`;
  const where = plan.channel === null ? "its hop set" : `radio ch ${plan.channel} (${plan.frequencyMhz} MHz)`;
  return `${printable(name, 24)}: ${boxes}, ${CROWD_WORDS[crowd]}, on ${where}`;
}

function choiceWords({ plan }: SystemPlacement, unit: LengthUnit): string {
  const { choice } = plan;
  if (choice === null)
    return plan.grid === null
      ? "none: the venue file names no place; without --candidates-only a grid is tried"
      : "none: the keep-outs leave no place; try another --height or --step";
  const verdict = spareWords(choice.leastMarginDb);
  const lead =
    verdictWord(choice.leastMarginDb) === "fails" ? "least bad: " : choice.from === "planned" ? "stay: " : "";
  const words = lead + placeWords(choice, unit);
  return fitting(`${words}: ${verdict}`, `, at ${printable(choice.weakest, 16)}`);
}

/** What the transmitter of the venue file does, where the choice is another. */
function plannedLine({ plan }: SystemPlacement): Line[] {
  const planned = plan.places.find(({ from }) => from === "planned");
  if (planned === undefined || planned === plan.choice) return [];
  const broken = breakInBrief(planned.breaks);
  const words = `${placeName(planned)}: ${spareWords(planned.leastMarginDb)}`;
  return [["Planned", fitting(words, broken === null ? "" : `; ${broken}`)]];
}

/** The best of each kind that isn't told yet: what somebody named, what the floor would allow. */
function bestLine({ plan }: SystemPlacement, unit: LengthUnit): Line[] {
  const line = (from: PlannedPlace["from"], label: string): Line[] => {
    const one = plan.places.find((place) => place.from === from);
    if (one === undefined || one === plan.choice || plan.choice?.from === from) return [];
    return [[label, `${placeWords(one, unit)}: ${spareWords(one.leastMarginDb)}`]];
  };
  return [...line("candidate", "Named"), ...line("grid", "Floor")];
}

function pairLine({ plan, joint }: SystemPlacement): Line[] {
  if (plan.pair === null) return [];
  const { receivers, leastMarginDb } = plan.pair;
  const parts = `${receivers[0].length} + ${receivers[1].length} receivers`;
  if (joint === null) return [["Two", `${parts}: ${spareWords(leastMarginDb)}`]];
  const channels = joint.systems
    .filter(({ name }) => joint.halves.includes(name))
    .map(({ twoChannel }) => twoChannel ?? "hopping");
  const gain = joint.twoMarginDb <= joint.oneMarginDb ? "; no better than one" : "";
  const words = `${parts}, radio ch ${channels.join(" + ")}: ${spareWords(joint.twoMarginDb)}`;
  return [["Two", fitting(words, gain)]];
}

/** Columns that a line of the opening block leaves for its words. */
const ROOM = 70;

/** Words with what else there is to say, where that fits. */
function fitting(words: string, more: string): string {
  return columnsOf(words + more) <= ROOM ? words + more : words;
}

function trustWords({ survey }: PlaceReport, { unscannedRooms }: SystemPlacement): string {
  if (unscannedRooms.length > 0)
    return `not scanned: ${unscannedRooms.map((name) => printable(name, 20)).join(", ")}; scan it first`;
  return `${survey.evidence.grade}; next look: ${survey.evidence.next}`;
}
