import { decodeIwSsid } from "./iw-ssid.js";

/**
 * What one BSS block of `iw dev <if> scan` has said so far, as text. Keys are lower case: an element's
 * name as `freq`, or element and bullet as `ht operation/primary channel`. What comes twice counts where
 * it comes first; a name where it isn't hidden.
 * @source iw scan.c output format (Linux nl80211 tool), read
 */
export class IwBlock {
  private readonly values = new Map<string, string>();
  private element = "";
  private tornKey = "";

  /** @param address as it stands; null when the block's first line is lost */
  constructor(
    readonly line: number,
    readonly address: string | null,
  ) {}

  /**
   * @param text one line, trimmed
   * @param isTop not part of an element: indented no further than the block's first line
   * @param isTorn the file ends within this line
   */
  add(text: string, isTop: boolean, isTorn: boolean): void {
    const isBullet = text.startsWith("*");
    if (!isTop && !isBullet) return;
    const [name, value] = nameAndValue(isBullet ? text.slice(1) : text);
    if (!isBullet) this.element = name;
    const key = isBullet ? `${this.element}/${name}` : name;
    if (isTorn) this.tornKey = key;
    if (key === "last seen" && value.endsWith("[boottime]")) return;
    if (!this.values.has(key) || (key === "ssid" && this.isHidden)) this.values.set(key, value);
  }

  /** @returns the text of a key; undefined when the block hasn't got it */
  get(key: string): string | undefined {
    return this.values.get(key);
  }

  has(key: string): boolean {
    return this.values.has(key);
  }

  /** Does the file end within this key's line, so that a text that makes no sense is no fault? */
  isTorn(key: string): boolean {
    return key === this.tornKey;
  }

  /** Has the block had this line already? A second one belongs to a block whose own first line is lost. */
  repeats(text: string): boolean {
    const [name] = nameAndValue(text);
    return (name === "tsf" || name === "freq") && this.values.has(name);
  }

  private get isHidden(): boolean {
    return decodeIwSsid(this.values.get("ssid") ?? "") === "";
  }
}

function nameAndValue(text: string): readonly [name: string, value: string] {
  const colonIndex = text.indexOf(":");
  if (colonIndex === -1) return [text.trim().toLowerCase(), ""];
  return [text.slice(0, colonIndex).trim().toLowerCase(), text.slice(colonIndex + 1).trim()];
}
