import type { AddressRow, UniverseUse } from "../patch/index.js";
import type { OverflowCost } from "../venue/index.js";
import type { PatchReport } from "./patch-report.js";
import { REASON_WORDS } from "./patch-words.js";

/** `stillband patch --json`: numbers are not rounded, null comes with a reason. */
export function patchJson(report: PatchReport): object {
  const { patch, venueName, room, system, issues, switchCounts, cautions } = report;
  const { options, addresses, systems, modes, refresh, emergency } = patch;
  return {
    schema: "stillband/patch@1",
    issues,
    venue: { name: venueName },
    shown: { room, system },
    options,
    rows: addresses.rows.map((row, index) => rowBlock(row, index, report)),
    universes: addresses.universes.map((use) => universeBlock(use, report)),
    systems: systems.map((one) => ({ ...one, channelReason: channelReason(one) })),
    conflicts: addresses.conflicts,
    overflows: patch.overflows.map(overflowBlock),
    fewest: addresses.fewest,
    modes: modes.map((mode) => ({
      ...mode,
      reason:
        mode.footprintSlotCount !== null
          ? null
          : mode.statedSlotCounts.length > 1
            ? "its luminaires state different footprints"
            : "no luminaire of it states a footprint, and none was given",
    })),
    refresh: { full: refresh.full, fullUsualBreak: refresh.fullUsualBreak, timing: refresh.timing },
    switchCounts,
    emergency,
    cautions,
  };
}

function rowBlock(row: AddressRow, index: number, { patch }: PatchReport): object {
  const { channel, fallback, switches } = patch.labels[index]!;
  return {
    ...row,
    reasonWords: row.reason === null ? null : REASON_WORDS[row.reason][1],
    channel,
    fallback,
    fallbackReason: fallback === null ? "the venue file settles none; stillband rooms names it" : null,
    switches,
  };
}

function universeBlock(use: UniverseUse, { patch }: PatchReport): object {
  const found = patch.refresh.universes.find(({ universe }) => universe === use.universe);
  return {
    ...use,
    refresh: found === undefined ? null : { sentSlotCount: found.sentSlotCount, ...found.frame },
  };
}

function channelReason({ hops, channel }: PatchReport["patch"]["systems"][number]): string | null {
  if (channel !== null) return null;
  return hops ? "it hops" : "the venue file settles none; stillband rooms chooses it";
}

function overflowBlock(overflow: OverflowCost): object {
  const { fitsInFreeOrder, firstFurtherUniverse } = overflow;
  return {
    ...overflow,
    fitsReason: fitsInFreeOrder === null ? "not proved either way, or the order was free" : null,
    furtherUniverseReason: firstFurtherUniverse === null ? "universes end at 63999" : null,
  };
}
