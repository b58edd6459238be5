/** |ours − theirs| / |theirs| */
export function relativeError(ours: number, theirs: number): number {
  return Math.abs(ours - theirs) / Math.abs(theirs);
}
