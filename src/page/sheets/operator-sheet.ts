import {
  conflictLines,
  fewestLines,
  labelled,
  modeLetter,
  nameOf,
  overflowLines,
  patchAssumptions,
  patchGlance,
  patchNotes,
  switchPicture,
  SWITCH_KEY,
} from "../../report/index.js";
import type { PatchReport } from "../../report/index.js";
import { facts, list, markup } from "../html/markup.js";
import type { Content } from "../html/markup.js";
import { part } from "../html/sheet.js";
import type { Sheet } from "../html/sheet.js";
import { columnsOf, table } from "../html/table.js";
import type { PageParts } from "../page-parts.js";
import { cautionPart, emergencyPart, statementsOr } from "./crew-parts.js";
import { labelsPart } from "./label-cards.js";

/** Addresses, and the labels for the luminaires. */
export function operatorSheet(patch: PatchReport, parts: PageParts): Sheet {
  const overflows = overflowLines(patch.patch);
  const fewest = fewestLines(patch.patch);
  return {
    id: "addresses",
    title: "Addresses and labels",
    whom: "the operator",
    body: [
      markup`<div class="glance">${facts(patchGlance(patch).map(labelled))}</div>\n`,
      part("Clashes and faults", statementsOr(conflictLines(patch.patch), "None.")),
      overflows.length === 0 ? null : part("Overflow", list(overflows)),
      part("DMX addresses", addressTable(patch, parts), markup`<p class="key">${SWITCH_KEY}</p>\n`),
      patch.patch.modes.length === 0 ? null : part("Modes", modeTable(patch, parts)),
      part("Universes", universeTable(patch, parts), fewest.length === 0 ? null : list(fewest)),
      part("Assumed", list(patchAssumptions(patch))),
      emergencyPart(patch.patch.emergency),
      cautionPart(patch.cautions),
      labelsPart(patch, parts),
    ],
  };
}

function addressTable({ patch }: PatchReport, { figures }: PageParts): Content {
  const noteOf = patchNotes(patch);
  const rows = patch.addresses.rows.map((row, index) => {
    const at = `/patch/rows/${String(index)}`;
    const switches = patch.labels[index]?.switches ?? null;
    return [
      nameOf(row.name),
      figures.figure("asIs", `${at}/universe`, { none: "none" }),
      figures.figure("asIs", `${at}/address`, { none: "none" }),
      figures.figure("asIs", `${at}/lastSlot`, { none: "" }),
      figures.figure("asIs", `${at}/footprintSlotCount`, { none: "?" }),
      switches === null ? "" : switches.fromOne === null ? "none: 512" : switchPicture(switches.fromOne),
      nameOf(row.room),
      row.group === null ? "" : nameOf(row.group),
      row.mode === null ? "" : modeLetter(patch, row.mode),
      row.receiver === null ? "own" : nameOf(row.receiver),
      noteOf(row),
    ];
  });
  const heads = [
    "luminaire",
    "-universe",
    "-DMX address",
    "-to",
    "-slots",
    "switches",
    "room",
    "row",
    "mode",
  ];
  const caption = "A row a luminaire, in the order of hanging";
  return table({ id: "address-table", caption, columns: columnsOf(...heads, "receiver", "note"), rows });
}

function modeTable({ patch }: PatchReport, { figures }: PageParts): Content {
  const rows = patch.modes.map(({ mode, statedSlotCounts, luminaires }, index) => [
    modeLetter(patch, mode),
    nameOf(mode),
    figures.figure("asIs", `/patch/modes/${String(index)}/footprintSlotCount`, {
      none:
        statedSlotCounts.length === 0
          ? "not known"
          : `${statedSlotCounts.join(" or ")}: ONE MODE, SEVERAL FOOTPRINTS`,
    }),
    luminaires.map(nameOf).join(", "),
  ]);
  const columns = columnsOf("mode", "set at the luminaire", "-slots", "luminaires");
  return table({
    id: "modes",
    caption: "Modes to set before an address means anything",
    columns,
    rows,
    isFixed: true,
  });
}

function universeTable({ patch }: PatchReport, { figures }: PageParts): Content {
  const rows = patch.addresses.universes.map(({ universe, systems }, index) => {
    const at = `/patch/universes/${String(index)}`;
    const counts = ["usedSlotCount", "spareSlotCount", "reservedSlotCount", "freeSlotCount", "lastUsedSlot"];
    const isKnown = patch.refresh.universes.some((one) => one.universe === universe);
    return [
      figures.figure("asIs", `${at}/universe`),
      ...counts.map((key) => figures.figure("asIs", `${at}/${key}`)),
      isKnown ? figures.figure("milliseconds", `${at}/refresh/frameUs`) : "",
      isKnown ? figures.figure("aSecond", `${at}/refresh/rateHz`) : "",
      systems.length === 0 ? "no system" : systems.map(nameOf).join(", "),
    ];
  });
  const heads = [
    "-universe",
    "-used",
    "-spare",
    "-reserved",
    "-free",
    "-sent to",
    "-frame",
    "-rate",
    "carried by",
  ];
  const caption = "Slots of 512, and the line's refresh up to the last used";
  return table({ id: "universes", caption, columns: columnsOf(...heads), rows, isFixed: true });
}
