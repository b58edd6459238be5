import type { CircuitFlag } from "../install/index.js";
import type { HangReport, PatchReport } from "../report/index.js";

/** Has every luminaire that is shown an address that none disputes? */
export function patchWorks({ patch: { addresses } }: PatchReport): boolean {
  return (
    addresses.rows.every(({ address }) => address !== null) &&
    addresses.conflicts.every(({ severity }) => severity !== "error")
  );
}

const FAILING: readonly CircuitFlag[] = ["beyond-breaker", "beyond-drivers", "beyond-drop", "no-earth"];

/** May every luminaire that is shown hang, at a length that is known, on a circuit that bears it? */
export function hangWorks({ plan: { hang, circuits } }: HangReport): boolean {
  return (
    hang.doNotHang.length === 0 &&
    hang.rows.every(({ gap }) => gap === null) &&
    circuits.rows.every(({ flags }) => !flags.some((flag) => FAILING.includes(flag)))
  );
}
