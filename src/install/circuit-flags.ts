import type { Circuit, CircuitFlag, CircuitRow } from "./circuit-types.js";

const OF_CONTROL: Readonly<Record<CircuitRow["control"], readonly CircuitFlag[]>> = {
  none: [],
  dimmer: ["dimmer"],
  "wall-switch": ["wall-switch"],
  sensor: ["sensor"],
  "time-clock": ["time-clock"],
  "transfer-switch": ["transfer-switch"],
  unknown: ["control-unknown"],
};

/** What the electrician has to see first, then what is asked for. */
export function circuitFlags(
  circuit: Circuit,
  row: Omit<CircuitRow, "flags">,
  isFactorGiven: boolean,
): CircuitFlag[] {
  const { earth = "unknown", sharedNeutral = "unknown", mostDriversCount = null } = circuit;
  const { choice } = row;
  const isDropTooGreat = choice.isDropJudged && choice.byDrop === null;
  const flags: readonly (readonly [CircuitFlag, boolean])[] = [
    ["beyond-breaker", row.verdict === "beyond"],
    ["beyond-drivers", mostDriversCount !== null && row.luminaires.length > mostDriversCount],
    ["beyond-drop", isDropTooGreat],
    ["no-earth", earth === "no"],
    ["shared-neutral", sharedNeutral === "yes"],
    ["ask-watts", row.unknownLoads.length > 0],
    ["ask-supply", row.supplyV === null],
    ["ask-breaker", row.breakerA === null],
    ["ask-continuous-factor", !isFactorGiven],
    ["ask-feed", row.feed === "unknown"],
    ["ask-feed-length", row.supplyV !== null && row.unknownLoads.length === 0 && !choice.isDropJudged],
    ["ask-inrush", mostDriversCount === null],
    ["ask-earth", earth === "unknown"],
    ["ask-shared-neutral", sharedNeutral === "unknown"],
  ];
  return [...OF_CONTROL[row.control], ...flags.flatMap(([flag, stands]) => (stands ? [flag] : []))];
}
