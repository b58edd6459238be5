import type { LengthItem, LengthLine, OrderGap, OrderList, PieceItem, PieceLine } from "../install/index.js";
import { lengthWords, orderWords, pitchWords } from "./hang-words.js";
import { countOf, nameOf } from "./patch-words.js";
import type { LengthUnit, TextStyle } from "./pen.js";
import { hanging } from "./section.js";
import { columnsOf } from "./text-layout.js";

/** What a line of the order is for, one and several. */
export const PIECE_WORDS: Readonly<Record<PieceItem, string>> = {
  transmitter: "transmitter",
  receiver: "receiver",
  "transmitter-antenna": "antenna for a transmitter",
  "receiver-antenna": "antenna for a receiver",
  "isolated-splitter": "isolated DMX splitter",
  "dmx-cable": "short DMX cable, receiver to luminaire or on to the next",
  terminator: "DMX terminator, 120 Ω",
  "power-connector": "power connector for a luminaire's inlet",
  hook: "rated hook",
  "swivel-canopy": "swivel canopy",
};

export const LENGTH_WORDS: Readonly<Record<LengthItem, string>> = {
  chain: "chain",
  "wire-rope": "wire rope",
  stem: "stem",
  "safety-cable": "safety cable",
  cord: "cord with earth",
};

const GAP_WORDS: Readonly<Record<OrderGap["item"], string>> = {
  suspension: "chain, rope or stem: no length yet",
  cord: "cord: no length yet",
  "safety-cable": "safety cable: no length yet",
  conductor: "cord: in the order without a size, which the circuit sheet asks for",
  receiver: "receiver: no system serves them",
};

/** The order, a line an item with the rows that need it under it unless those are not asked for. */
export function orderLines(
  { lines }: Pick<OrderList, "lines">,
  style: TextStyle,
  { withNeeds = true }: { readonly withNeeds?: boolean } = {},
): string[] {
  const heads = lines.map((line) =>
    line.kind === "pieces" ? pieceHead(line) : lengthHead(line, style.units),
  );
  const width = Math.max(0, ...heads.map(([quantity]) => columnsOf(quantity)));
  return lines.flatMap((line, index) => {
    const [quantity, words] = heads[index]!;
    const item = hanging(`${quantity.padStart(width)}  `, words, style.columnCount);
    if (!withNeeds) return item;
    const names = line.kind === "pieces" ? pieceNeeds(line) : line.needs.map(({ name }) => nameOf(name));
    return [...item, ...hanging(`${" ".repeat(width)}  for `, names.join(", "), style.columnCount)];
  });
}

/** What is not in the order yet. */
export function orderGapLines({ gaps }: OrderList): string[] {
  const items = Object.keys(GAP_WORDS) as OrderGap["item"][];
  return items.flatMap((item) => {
    const names = gaps.filter((gap) => gap.item === item).map(({ name }) => nameOf(name));
    return names.length === 0 ? [] : `${GAP_WORDS[item]}: ${names.join(", ")}.`;
  });
}

function pieceHead({
  item,
  orderCount,
  neededCount,
  spareCount,
}: PieceLine): [quantity: string, words: string] {
  return [String(orderCount), `${PIECE_WORDS[item]}: ${neededCount} needed, ${spareCount} spare`];
}

function pieceNeeds({ needs }: PieceLine): string[] {
  return needs.map(({ name, pieceCount }) =>
    pieceCount === 1 ? nameOf(name) : `${nameOf(name)} ${pieceCount}`,
  );
}

/** What is ordered by the length, with its size. */
export function lengthItemWords({ item, conductor, stepM }: LengthLine, units: LengthUnit): string {
  const words = LENGTH_WORDS[item];
  if (item === "cord") return `${words}, ${conductor ?? "SIZE NOT DECIDED"}`;
  if (stepM === null) return words;
  return `${words}, ${item === "stem" ? "steps of" : "link pitch"} ${pitchWords(stepM, units)}`;
}

function lengthHead(line: LengthLine, units: LengthUnit): [quantity: string, words: string] {
  const { order, stepM, item } = line;
  const links =
    item === "chain" && stepM !== null ? `, ${countOf(Math.round(order.lengthM / stepM), "link")}` : "";
  const need = `${lengthWords(order.lengthM, units)} in ${countOf(order.pieceCount, "piece")}${links}`;
  const words = `${lengthItemWords(line, units)}: ${need}`;
  if (order.spoolM === null || order.spoolCount === null) return [orderWords(order.orderM, units), words];
  const long =
    order.tooLongCount === 0
      ? ""
      : `; ${countOf(order.tooLongCount, "piece")} LONGER THAN A SPOOL, order apart`;
  const spools = `${order.spoolCount} x ${orderWords(order.spoolM, units)}`;
  return [spools, `${words}; ${orderWords(order.orderM, units)} with waste, cut whole${long}`];
}
