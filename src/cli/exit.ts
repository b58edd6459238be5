import type { Issue } from "../issues/index.js";

/** Exit codes, after sysexits where it has one. */
export const EXIT = {
  ok: 0,
  checkFailed: 1,
  usage: 64,
  badData: 65,
  noInput: 66,
  bug: 70,
  cannotCreate: 73,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** An end that the user can do something about: what, where, why, and the next step. */
export class CliError extends Error {
  override readonly name = "CliError";
  constructor(
    readonly exitCode: ExitCode,
    message: string,
    /** What to try; its own line. */
    readonly next?: string,
    /** The same as data, for --json; empty where no input is to blame. */
    readonly issues: readonly Issue[] = [],
  ) {
    super(message);
  }
}
