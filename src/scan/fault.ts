import type { IssueCode } from "../issues/index.js";

/** What is wrong with a row, before it is known where the row stands. */
export interface Fault {
  readonly code: IssueCode;
  readonly column?: string;
  /** The raw text, untrimmed. */
  readonly value?: string;
  readonly expected: string;
}
