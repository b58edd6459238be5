export { ArgumentError } from "./argument-error.js";
export { formatIssue, printable } from "./format-issue.js";
export type { Issue, IssueCode } from "./issue.js";
export { tellProgress, throwIfAborted } from "./long-work.js";
export type { LongWork, StopSignal, WorkProgress } from "./long-work.js";
export { requireFinite, requireNonNegative, requirePositive, requireRatio, requireWhole } from "./require.js";
