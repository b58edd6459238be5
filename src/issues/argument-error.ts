/** A caller's mistake: an argument that no computation can be made with. Bad data is returned as {@link Issue}s instead. */
export class ArgumentError extends RangeError {
  override readonly name = "ArgumentError";
  readonly code = "E_ARGUMENT";
  constructor(
    readonly argument: string,
    readonly expected: string,
    readonly received: unknown,
  ) {
    super(`${argument}: expected ${expected}, got ${String(received)}`);
  }
}
