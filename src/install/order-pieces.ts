import { SLACK } from "../units/index.js";
import type { OrderOptions, PieceItem, PieceLine, PieceNeed } from "./order-types.js";

/** Radio parts: at least one spare of each on the shelf, as no shop next door sells them. */
const RADIO_PARTS: readonly PieceItem[] = [
  "transmitter",
  "receiver",
  "transmitter-antenna",
  "receiver-antenna",
];

/** Lines by the piece; an item that nobody needs has none. */
export function orderPieces(options: OrderOptions, spareRatio: number): PieceLine[] {
  const { systems, receivers, hang, antennasApart = true } = options;
  const transmitters = each(systems);
  const boxes = each(receivers);
  const cabled = receivers.filter(({ luminaires }) => luminaires.length > 0);
  const luminaires = hang.rows;
  const needs: readonly (readonly [PieceItem, readonly PieceNeed[]])[] = [
    ["transmitter", transmitters],
    ["transmitter-antenna", antennasApart ? transmitters : []],
    ["receiver", boxes],
    ["receiver-antenna", antennasApart ? boxes : []],
    // One console line feeds several transmitters only through isolated outputs.
    ["isolated-splitter", systems.length > 1 ? [{ name: systems[0]!.name, pieceCount: 1 }] : []],
    ["dmx-cable", cabled.map(({ name, luminaires: own }) => ({ name, pieceCount: own.length }))],
    // The last wired device of each line: of the console's at every transmitter, of every receiver's.
    ["terminator", [...transmitters, ...each(cabled)]],
    ["power-connector", each(luminaires)],
    [
      "hook",
      each(
        luminaires.filter(({ suspension }) => suspension !== "stem"),
        HOOKS_EACH_COUNT,
      ),
    ],
    ["swivel-canopy", each(luminaires.filter(({ swivelCanopy }) => swivelCanopy === "needed"))],
  ];
  return needs.flatMap(([item, own]) => (own.length > 0 ? [pieceLine(item, own, spareRatio)] : []));
}

/** Above and below the chain. */
const HOOKS_EACH_COUNT = 2;

function each(named: readonly { readonly name: string }[], pieceCount = 1): PieceNeed[] {
  return named.map(({ name }) => ({ name, pieceCount }));
}

function pieceLine(item: PieceItem, needs: readonly PieceNeed[], spareRatio: number): PieceLine {
  const neededCount = needs.reduce((count, { pieceCount }) => count + pieceCount, 0);
  const shareCount = Math.ceil(neededCount * spareRatio - SLACK);
  const spareCount = Math.max(shareCount, RADIO_PARTS.includes(item) ? 1 : 0);
  return { kind: "pieces", item, neededCount, spareCount, orderCount: neededCount + spareCount, needs };
}
