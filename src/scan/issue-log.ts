import type { Issue } from "../issues/index.js";

/** From this number on, issues of one kind (code and column) are grouped. */
const GROUPED_COUNT = 20;
/** How many of a group are shown singly before the one that stands for the rest. */
const SHOWN_COUNT = 3;
/** Longer values are cut: a record may be a million characters long. */
const LONGEST_VALUE_COUNT = 4_096;

interface Kind {
  readonly first: Issue[];
  totalCount: number;
}

/** Gathers the issues of one file in bounded memory, and groups those of one kind when they are many. */
export class IssueLog {
  private readonly kinds = new Map<string, Kind>();

  add(issue: Issue): void {
    const key = `${issue.code}\n${issue.column ?? ""}`;
    let kind = this.kinds.get(key);
    if (kind === undefined) this.kinds.set(key, (kind = { first: [], totalCount: 0 }));
    kind.totalCount++;
    if (kind.first.length < GROUPED_COUNT - 1) kind.first.push(shortened(issue));
  }

  /** @returns by line; what has no line comes last */
  issues(): readonly Issue[] {
    return [...this.kinds.values()]
      .flatMap(({ first, totalCount }) => grouped(first, totalCount))
      .sort((a, b) => (a.line ?? Infinity) - (b.line ?? Infinity) || 0);
  }
}

function shortened(issue: Issue): Issue {
  if (issue.value === undefined || issue.value.length <= LONGEST_VALUE_COUNT) return issue;
  return { ...issue, value: `${issue.value.slice(0, LONGEST_VALUE_COUNT)}…` };
}

function grouped(first: readonly Issue[], totalCount: number): readonly Issue[] {
  if (totalCount < GROUPED_COUNT) return first;
  const rest = { ...first[SHOWN_COUNT]!, count: totalCount - SHOWN_COUNT };
  return [...first.slice(0, SHOWN_COUNT), rest];
}
