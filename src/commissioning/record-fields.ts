import type { Issue } from "../issues/index.js";

/** The fields of a mapping that came from a file; what is wrong with them is told once each, with its path. */
export class RecordFields {
  private readonly fields: Readonly<Record<string, unknown>>;

  constructor(
    data: unknown,
    private readonly source: string,
    readonly issues: Issue[],
    private readonly path = "",
  ) {
    const isMapping = typeof data === "object" && data !== null && !Array.isArray(data);
    this.fields = isMapping ? (data as Record<string, unknown>) : {};
    if (!isMapping) this.tell(path, data, "a mapping");
  }

  /** @returns the field; undefined, and told, where it is not what is expected */
  field<T>(key: string, expected: string, is: (value: unknown) => value is T): T | undefined {
    const value = this.own(key);
    if (is(value)) return value;
    this.tell(this.pathOf(key), value, expected);
    return undefined;
  }

  has(key: string): boolean {
    return this.own(key) !== undefined;
  }

  number(key: string, expected = "a number", accepts?: (value: number) => boolean): number | undefined {
    const is = (value: unknown): value is number =>
      isNumber(value) && (accepts === undefined || accepts(value));
    return this.field(key, expected, is);
  }

  numberOrNull(key: string): number | null | undefined {
    return this.field(key, "a number or null", (value) => value === null || isNumber(value));
  }

  text(key: string): string | undefined {
    return this.field(key, "text", isText);
  }

  textOrNull(key: string): string | null | undefined {
    return this.field(key, "text or null", (value) => value === null || isText(value));
  }

  /** Two numbers, the first no greater than the second. */
  range(key: string): readonly [low: number, high: number] | undefined {
    return this.field(key, "two numbers, the lower first", isRange);
  }

  /** @returns what `read` makes of each entry of a list */
  list<T>(key: string, read: (fields: RecordFields) => T): T[] {
    const entries = this.field(key, "a list", Array.isArray) ?? [];
    return entries.map((entry, index) =>
      read(new RecordFields(entry, this.source, this.issues, `${this.pathOf(key)}[${index}]`)),
    );
  }

  tell(path: string, value: unknown, expected: string): void {
    const shown = value === undefined ? {} : { value: JSON.stringify(value).slice(0, LONGEST_VALUE_COUNT) };
    this.issues.push({
      ...{ code: value === undefined ? "missing-cell" : "bad-cell", severity: "error", source: this.source },
      ...{ ...(path !== "" && { column: path }), ...shown, expected, action: "stopped" },
    });
  }

  private own(key: string): unknown {
    return Object.hasOwn(this.fields, key) ? this.fields[key] : undefined;
  }

  private pathOf(key: string): string {
    return this.path === "" ? key : `${this.path}.${key}`;
  }
}

const LONGEST_VALUE_COUNT = 200;

function isNumber(value: unknown): value is number {
  return typeof value === "number" && Number.isFinite(value);
}

function isText(value: unknown): value is string {
  return typeof value === "string";
}

function isRange(value: unknown): value is readonly [number, number] {
  return Array.isArray(value) && value.length === 2 && value.every(isNumber) && value[0]! <= value[1]!;
}
