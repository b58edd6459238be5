const BLOCKS = [" ", "▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"];

/**
 * The block that fills one character cell of a bar from below.
 * @param filledRatio how much of the cell the bar fills; below 0 is empty, above 1 full
 * @example barMark(0.5); // => "▄"
 */
export function barMark(filledRatio: number): string {
  return BLOCKS[Math.max(0, Math.min(8, Math.round(filledRatio * 8)))]!;
}
