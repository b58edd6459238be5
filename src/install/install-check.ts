/** When a check is made. */
export type CheckStage = "before" | "ground" | "lift" | "room" | "handover";

/** What is checked. */
export type CheckCode =
  | "dead-and-locked"
  | "control-out"
  | "emergency-settled"
  | "rating-settled"
  | "channel-set"
  | "address-set"
  | "loss-behaviour-set"
  | "label-written"
  | "linked-on-ground"
  | "listening-before-raise"
  | "power-made-up"
  | "terminated"
  | "link-at-trim"
  | "no-rdm"
  | "power-cut"
  | "transmitter-off"
  | "handover-scan"
  | "full-house-scan";

/** A piece of a sentence: words, or a length that the sheet writes in its unit. */
export type CheckPart = string | { readonly lengthM: number };

/** The columns of a readings file that the checks fill. */
export const CHECK_READING_COLUMNS = [
  "receiver",
  "transmitter",
  "heard",
  "received_dbm",
  "quality",
  "time",
] as const;

/** A column of the readings file. */
export type CheckReadingColumn = (typeof CHECK_READING_COLUMNS)[number];

/** What is written down beside a check and goes into no readings file. */
export type CheckNote = "linked" | "relink_s" | "loss_state" | "scan_file" | "scan_time" | "remark";

/** A blank beside the tick; the paper asks for what is not filled in. */
export type CheckBlank =
  | { readonly kind: "reading"; readonly column: CheckReadingColumn; readonly filled: string | null }
  | { readonly kind: "note"; readonly column: CheckNote; readonly filled: null };

/** A line of the checklist. */
export interface InstallCheck {
  readonly code: CheckCode;
  readonly stage: CheckStage;
  /** The circuit, system, receiver or luminaire; null: the venue. */
  readonly subject: string | null;
  readonly parts: readonly CheckPart[];
  /** Beside the tick; empty where a tick is enough. */
  readonly blanks: readonly CheckBlank[];
}

/** A check without blanks. */
export function tick(
  stage: CheckStage,
  code: CheckCode,
  subject: string | null,
  ...parts: readonly CheckPart[]
): InstallCheck {
  return { code, stage, subject, parts, blanks: [] };
}

/** Blanks that go into no readings file. */
export function notes(...columns: readonly CheckNote[]): CheckBlank[] {
  return columns.map((column) => ({ kind: "note", column, filled: null }));
}

/** A row of the readings file: who is read is printed already, what is read is written by hand. */
export function readingRow(receiver: string, transmitter: string): CheckBlank[] {
  const printed: Partial<Record<CheckReadingColumn, string>> = { receiver, transmitter };
  return CHECK_READING_COLUMNS.map((column) => ({
    kind: "reading",
    column,
    filled: printed[column] ?? null,
  }));
}
