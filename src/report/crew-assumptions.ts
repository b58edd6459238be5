import type { HangReport } from "./hang-report.js";
import { exactPercent } from "./number-format.js";

/** What the order list rests on, one statement a line. */
export function orderAssumptions({ plan, options }: HangReport): string[] {
  const { spareRatio, wasteRatio } = plan.order;
  const spools = [options.cordSpoolM, options.chainSpoolM, options.safetySpoolM];
  return [
    `Spares ${exactPercent(spareRatio)} in whole units (--spare-share${options.spareRatio === undefined ? ", assumed" : ""}), of each radio part at least one; waste ${exactPercent(wasteRatio)} of what comes by the length.`,
    spools.some((spoolM) => spoolM !== undefined)
      ? "Pieces are cut whole from spools, longest first, never joined."
      : "Ordered by the length; --spool, --chain-spool and --safety-spool count spools.",
    "A receiver may serve several luminaires over a short cable; the last wired device of each line, console's or receiver's, has a terminator (ANSI E1.11, from memory). Two hooks a chain or rope, one isolated splitter where several transmitters share a console line: common practice, no source.",
    "A stated or through-fed cord is in the order as the circuit sheet has it, any other as the hang sheet has it.",
  ];
}

/** What checks and labels rest on, one statement a line. */
export function checkAssumptions(): string[] {
  return [
    "Addresses are those that stillband patch gives without options; settle them in the venue file to keep others.",
    "Radio channel and fallback stand where the venue file settles them, or --channel and --fallback do; stillband rooms chooses them. A blank is filled in before labels go up.",
  ];
}
