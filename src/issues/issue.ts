/** What can be wrong with data. A code is public API; the sentence made from it is not. */
export type IssueCode =
  | "bad-cell"
  | "missing-cell"
  | "missing-column"
  | "ragged-row"
  | "contradiction"
  | "stale-channel"
  | "unreadable"
  | "no-usable-row"
  | "limit"
  | "assumed"
  | "ignored"
  | "rule-breach"
  | "not-judged";

/** One thing worth telling the user, as data. Words are made in `formatIssue`. */
export interface Issue {
  readonly code: IssueCode;
  readonly severity: "error" | "warning" | "note";
  /** File name as given, `<stdin>`, or the option or profile that it is about. */
  readonly source: string;
  /** 1-based physical line where the record starts: the header and quoted newlines count. */
  readonly line?: number;
  /** 1-based data record, header not counted. */
  readonly record?: number;
  readonly column?: string;
  /** The raw text, untrimmed. */
  readonly value?: string;
  /** What was expected, or what is stated. */
  readonly expected: string;
  readonly action: "row skipped" | "value ignored" | "stopped" | "stated";
  /** How many of this kind stand behind this one line, when they are grouped. */
  readonly count?: number;
}
