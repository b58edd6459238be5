import type { PatchSystem } from "./patch-luminaire.js";
import type { Placement } from "./placement.js";
import type { SlotMap } from "./slot-map.js";

/** Systems that carry the same universes, and so share their slots. */
export interface UniversePool {
  readonly systemNames: readonly string[];
  readonly firstUniverse: number;
  readonly universeCount: number;
  /** Are some of its universes another pool's too? */
  readonly shared: boolean;
}

/** @returns the systems by the universes that they carry, in the order given */
export function universePools(systems: readonly PatchSystem[]): UniversePool[] {
  const pools = new Map<string, PatchSystem[]>();
  for (const system of systems) {
    const key = `${system.universe} ${system.universeCount ?? 1}`;
    pools.set(key, [...(pools.get(key) ?? []), system]);
  }
  return [...pools.values()].map((members) => {
    const { universe: firstUniverse, universeCount = 1 } = members[0]!;
    const others = systems.filter((system) => !members.includes(system));
    return {
      systemNames: members.map(({ name }) => name),
      firstUniverse,
      universeCount,
      shared: others.some(
        (other) =>
          other.universe < firstUniverse + universeCount &&
          firstUniverse < other.universe + (other.universeCount ?? 1),
      ),
    };
  });
}

/** The slots of a pool's universes, and behind them as many further ones as it takes. */
export class PoolUniverses {
  private readonly further: Uint8Array[] = [];
  constructor(
    private readonly pool: UniversePool,
    private readonly map: SlotMap,
  ) {}

  /** @returns what each slot of the pool's universe number `universeIndex` holds, counted from 0 */
  at(universeIndex: number): Uint8Array {
    const universe = this.universe(universeIndex);
    if (universe !== null) return this.map.of(universe);
    const behind = universeIndex - this.pool.universeCount;
    while (this.further.length <= behind) this.further.push(this.map.reservedOnly(null));
    return this.further[behind]!;
  }

  /** @returns the number of that universe; null: one that no system carries yet */
  universe(universeIndex: number): number | null {
    return universeIndex < this.pool.universeCount ? this.pool.firstUniverse + universeIndex : null;
  }
  /** @returns a universe in which nothing but the reserved slots is taken: none of the pool's has more room */
  ordinary(): Uint8Array {
    return this.map.reservedOnly(null);
  }

  /** @returns the placement of a luminaire at an address of the pool's universe number `universeIndex` */
  placement(listIndex: number, universeIndex: number, address: number): Placement {
    const universe = this.universe(universeIndex);
    if (universe !== null) return { listIndex, universe, address, reason: null, furtherIndex: null };
    const furtherIndex = universeIndex - this.pool.universeCount;
    return { listIndex, universe, address: null, reason: "overflow", furtherIndex };
  }
}
