import type { PatchPlan } from "./plan-patch.js";

/** What is looked at of a patch; all of it where neither is given. */
export interface PatchPart {
  readonly room?: string | undefined;
  readonly system?: string | undefined;
}

/**
 * The part of a patch that one room or one system has: its luminaires, who clashes with them, the universes that
 * they lie in or that their systems carry. The addresses are those of the whole venue's patch.
 * @see {@link planPatch}
 */
export function narrowPatch(plan: PatchPlan, { room, system }: PatchPart): PatchPlan {
  if (room === undefined && system === undefined) return plan;
  const { addresses, labels, emergency } = plan;
  const isShown = (row: { readonly room: string; readonly system: string | null }): boolean =>
    (room === undefined || row.room === room) && (system === undefined || row.system === system);
  const rows = addresses.rows.filter(isShown);
  const names = new Set(rows.map(({ name }) => name));
  const ofShown = (all: readonly string[]): boolean => all.some((name) => names.has(name));
  const systems = plan.systems.filter(
    ({ name }) => name === system || rows.some((row) => row.system === name),
  );
  const inUniverse = ({ universe }: { readonly universe: number }): boolean =>
    rows.some((row) => row.universe === universe) ||
    systems.some((one) => universe >= one.universe && universe < one.universe + one.universeCount);
  const overflows = plan.overflows.filter(({ luminaires }) => ofShown(luminaires));
  return {
    ...plan,
    addresses: {
      rows,
      universes: addresses.universes.filter(inUniverse),
      overflows: addresses.overflows.filter(({ luminaires }) => ofShown(luminaires)),
      fewest: addresses.fewest.filter((one) => systems.some(({ name }) => one.systems.includes(name))),
      conflicts: addresses.conflicts.filter(({ luminaires }) => ofShown(luminaires.map(({ name }) => name))),
    },
    labels: labels.filter(isShown),
    systems,
    modes: plan.modes.filter(({ luminaires }) => ofShown(luminaires)),
    overflows,
    refresh: { ...plan.refresh, universes: plan.refresh.universes.filter(inUniverse) },
    emergency: {
      names: emergency.names.filter((name) => names.has(name)),
      unknownNames: emergency.unknownNames.filter((name) => names.has(name)),
    },
  };
}
