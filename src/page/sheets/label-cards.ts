import { LABELS_KEY, nameOf } from "../../report/index.js";
import type { PatchReport } from "../../report/index.js";
import { based } from "../html/based.js";
import { markup } from "../html/markup.js";
import type { Content, Markup } from "../html/markup.js";
import { part } from "../html/sheet.js";
import type { PageParts } from "../page-parts.js";

type Label = PatchReport["patch"]["labels"][number];

/** A label for each luminaire, to cut out, in the order of hanging. */
export function labelsPart(patch: PatchReport, parts: PageParts): Markup {
  const cards = patch.patch.labels.map((label, index) => labelCard(label, index, patch, parts));
  return part(
    "Labels, to cut out along the lines",
    markup`<p class="key">${LABELS_KEY}</p>\n<div class="labels">\n${cards}</div>\n`,
  );
}

function labelCard(label: Label, index: number, { patch }: PatchReport, { figures }: PageParts): Markup {
  const { name, room, mode, receiver, system } = label;
  const at = `/patch/rows/${String(index)}`;
  const blank = { none: "____" };
  const hops = patch.systems.some((one) => one.name === system && one.hops);
  const card = markup`
<p class="name">${nameOf(name)}</p>
<p>${nameOf(room)}</p>
<p>DMX address <b>${figures.figure("asIs", `${at}/address`, blank)}</b> to ${figures.figure("asIs", `${at}/lastSlot`, blank)}, universe <b>${figures.figure("asIs", `${at}/universe`, blank)}</b>, ${figures.figure("asIs", `${at}/footprintSlotCount`, blank)} slots</p>
<p>Mode ${mode === null ? "________" : nameOf(mode)}</p>
<p>Receiver ${receiver === null ? "its own" : nameOf(receiver)}, system ${system === null ? "________" : nameOf(system)}</p>
<p>${hops ? "The radio hops: no radio channel to set" : channels(label, index, figures)}</p>
${emergencyWords(name, patch.emergency)}${switchRows(label)}`;
  return based('div class="label"', card);
}

function channels(label: Label, index: number, figures: PageParts["figures"]): Content {
  const said = (key: "channel" | "fallback", what: string): Content => {
    const at = `/patch/rows/${String(index)}/${key}`;
    if (label[key] === null) return `${what} ________`;
    return [
      `${what} `,
      figures.figure("asIs", `${at}/channel`),
      " (",
      figures.figure("mhz", `${at}/centreMhz`),
      ")",
    ];
  };
  return [said("channel", "Radio ch"), ", ", said("fallback", "fallback")];
}

function emergencyWords(name: string, { names, unknownNames }: PatchReport["patch"]["emergency"]): Content {
  if (names.includes(name))
    return markup`<p class="heed">EMERGENCY OR EXIT LIGHTING: must not depend on the radio link</p>\n`;
  if (!unknownNames.includes(name)) return null;
  return markup`<p class="heed">EMERGENCY OR EXIT LIGHTING? NOT KNOWN: ask before it hangs</p>\n`;
}

/** Nine switches, the first to the left: from one, and less one for luminaires that count from zero. */
function switchRows({ switches }: Label): Content {
  if (switches === null) return markup`<p>Switches ____</p>\n`;
  const { fromOne, fromZero } = switches;
  return markup`<p class="switches">${fromOne === null ? "Nine switches can't say 512; only a luminaire that counts from zero" : ["Switches ", picture(fromOne)]}</p>
<p class="switches">From zero ${picture(fromZero)}</p>
`;
}

/** A box a switch, filled where it is on; in words for those who don't see it. */
function picture(setting: readonly boolean[]): Content {
  const on = setting.flatMap((isOn, index) => (isOn ? [String(index + 1)] : []));
  const words = on.length === 0 ? "all off" : `${on.join(", ")} on`;
  const boxes = setting.map((isOn, index) => (isOn ? markup`<b>${String(index + 1)}</b>` : markup`<i>·</i>`));
  return markup`<span class="sw" role="img" aria-label="${words}">${boxes}</span>`;
}
