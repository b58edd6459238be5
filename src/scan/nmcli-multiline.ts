import { columnsOf } from "./nmcli-columns.js";
import { kindsByContent } from "./nmcli-content.js";
import { isHeadingWord, isUsable, kindsByHeading } from "./nmcli-kinds.js";
import type { NmcliKind } from "./nmcli-kinds.js";
import { addNmcliRows } from "./nmcli-section.js";
import type { OsTextSink } from "./os-text-sink.js";
import type { TextLine } from "./text-lines.js";

interface Field {
  readonly line: number;
  readonly key: string;
  readonly value: string;
}

interface Block {
  readonly line: number;
  readonly cells: Map<string, string>;
}

/**
 * Reads what `nmcli -m multiline device wifi list` prints: a line `KEY: value` a field; a key that comes
 * again begins the next row, `AP[1].` before it (as `nmcli device show` writes it) is no part of it. Where keys are
 * English, other keys are none. Nothing is escaped. Blocks are sorted by the keys that they have.
 * @source `nmcli -m multiline device wifi list`, from memory
 */
export class NmcliMultilineReader {
  /** Null: a line that is no field. */
  private readonly fields: (Field | null)[] = [];
  private block: Block | null = null;
  private readonly blocks = new Map<string, Block[]>();

  constructor(private readonly sink: OsTextSink) {}

  read({ line, text }: TextLine): void {
    const parts = /^(?:AP\[\d+\]\.)?([^:\s][^:]{0,39}):[ \t]*(.*)$/s.exec(text);
    const [, key = "", value = ""] = parts ?? [];
    this.fields.push(parts === null ? null : { line, key, value });
  }

  finish(): void {
    const headings = new Set(this.fields.flatMap((field) => field?.key ?? []).filter(isHeadingWord));
    const isEnglish = isUsable(kindsByHeading([...headings])!);
    for (const field of this.fields)
      if (field === null || (isEnglish ? !isHeadingWord(field.key) : NO_KEY.test(field.key))) this.endBlock();
      else this.add(field);
    this.endBlock();
    const groups = [...this.blocks.values()].map((blocks) => ({ blocks, kinds: kindsOf(blocks) }));
    const whole = groups.find(({ kinds }) => isUsable(kinds));
    for (const { blocks, kinds } of groups)
      if (
        isUsable(kinds) ||
        (whole === undefined ? kinds.includes("address") : sharesKeys(blocks, whole.blocks))
      )
        addNmcliRows(
          blocks.map(({ line, cells }) => ({ line, cells: [...cells.values()] })),
          kinds,
          this.sink,
        );
  }

  private add({ line, key, value }: Field): void {
    if (this.block?.cells.has(key) === true) this.endBlock();
    this.block ??= { line, cells: new Map() };
    this.block.cells.set(key, value.trimEnd());
  }

  private endBlock(): void {
    const block = this.block;
    this.block = null;
    if (block === null) return;
    const keys = JSON.stringify([...block.cells.keys()]);
    const alike = this.blocks.get(keys);
    if (alike === undefined) this.blocks.set(keys, [block]);
    else alike.push(block);
  }
}

/** What stands before the colon of a prompt. */
const NO_KEY = /[@$#>]|^[A-Z]$/;

function kindsOf(blocks: readonly Block[]): readonly NmcliKind[] {
  const keys = [...blocks[0]!.cells.keys()];
  const rows = blocks.map(({ cells }) => [...cells.values()]);
  return kindsByHeading(keys) ?? kindsByContent(columnsOf(rows, keys.length));
}

/** A block that lacks some lines of the others is a row all the same. */
function sharesKeys([block]: readonly Block[], [other]: readonly Block[]): boolean {
  return [...block!.cells.keys()].every((key) => other!.cells.has(key));
}
