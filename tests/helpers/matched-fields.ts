/** Complex numbers of the tests' own, [re, im]. */
export type Pair = readonly [re: number, im: number];

export const plus = (a: Pair, b: Pair): Pair => [a[0] + b[0], a[1] + b[1]];
export const minus = (a: Pair, b: Pair): Pair => [a[0] - b[0], a[1] - b[1]];
export const times = (a: Pair, b: Pair): Pair => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
export const over = (a: Pair, b: Pair): Pair => {
  const size = b[0] ** 2 + b[1] ** 2;
  return [(a[0] * b[0] + a[1] * b[1]) / size, (a[1] * b[0] - a[0] * b[1]) / size];
};
export const power = (a: Pair): number => a[0] ** 2 + a[1] ** 2;
/** Root by halving the angle. */
export const root = (a: Pair): Pair => {
  const [size, angle] = [Math.sqrt(Math.hypot(...a)), Math.atan2(a[1], a[0]) / 2];
  return [size * Math.cos(angle), size * Math.sin(angle)];
};
/** e^(−j·a) */
export const turned = (a: Pair): Pair => [Math.exp(a[1]) * Math.cos(a[0]), -Math.exp(a[1]) * Math.sin(a[0])];

export interface MatchedLayer {
  readonly eta: Pair;
  readonly thicknessM: number;
}

/**
 * Shares of power that layers in air transmit and reflect, from the boundary conditions alone: the unknowns
 * are the forward and backward wave of each layer, the reflected and the transmitted one; E and its slope
 * (TE), or H and its slope over η (TM), continue across each face; the linear system is solved by elimination.
 */
export function matchedFields(
  layers: readonly MatchedLayer[],
  frequencyMhz: number,
  incidenceDeg: number,
  polarisation: "TE" | "TM",
): { readonly transmittedRatio: number; readonly reflectedRatio: number } {
  const k = (2 * Math.PI * frequencyMhz * 1e6) / 299_792_458;
  const sine = Math.sin((incidenceDeg * Math.PI) / 180);
  const media = [
    { eta: [1, 0] as Pair, thicknessM: 0 },
    ...layers,
    { eta: [1, 0] as Pair, thicknessM: 0 },
  ].map(({ eta, thicknessM }) => {
    const along = times([k, 0], root(minus(eta, [sine ** 2, 0])));
    return {
      across: turned(times(along, [thicknessM, 0])),
      slope: polarisation === "TE" ? along : over(along, eta),
    };
  });
  // Columns 2i and 2i + 1: forward wave at the left face of medium i, backward wave at its right face.
  const count = 2 * media.length;
  const rows: Pair[][] = [];
  const row = (cells: readonly (readonly [number, Pair])[], right: Pair = [0, 0]): void => {
    const line: Pair[] = Array.from({ length: count + 1 }, () => [0, 0]);
    for (const [column, value] of cells) line[column] = value;
    line[count] = right;
    rows.push(line);
  };
  row([[0, [1, 0]]], [1, 0]); // the incident wave
  row([[count - 1, [1, 0]]]); // nothing comes back from behind
  for (let i = 0; i + 1 < media.length; i++) {
    const [left, right] = [media[i]!, media[i + 1]!];
    const column = 2 * i;
    row([
      [column, left.across],
      [column + 1, [1, 0]],
      [column + 2, [-1, 0]],
      [column + 3, minus([0, 0], right.across)],
    ]);
    row([
      [column, times(left.slope, left.across)],
      [column + 1, minus([0, 0], left.slope)],
      [column + 2, minus([0, 0], right.slope)],
      [column + 3, times(right.slope, right.across)],
    ]);
  }
  const waves = solved(rows);
  return { transmittedRatio: power(waves[count - 2]!), reflectedRatio: power(waves[1]!) };
}

/** Gauss-Jordan with the largest pivot; each row holds its right side last. */
function solved(rows: Pair[][]): Pair[] {
  for (let i = 0; i < rows.length; i++) {
    let best = i;
    for (let j = i; j < rows.length; j++) if (power(rows[j]![i]!) > power(rows[best]![i]!)) best = j;
    [rows[i], rows[best]] = [rows[best]!, rows[i]!];
    const pivot = rows[i]!.map((cell) => over(cell, rows[i]![i]!));
    rows[i] = pivot;
    for (let j = 0; j < rows.length; j++) {
      if (j === i) continue;
      const factor = rows[j]![i]!;
      rows[j] = rows[j]!.map((cell, column) => minus(cell, times(factor, pivot[column]!)));
    }
  }
  return rows.map((line) => line.at(-1)!);
}
