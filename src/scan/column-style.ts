import { mostly } from "./column-content.js";
import type { ColumnContent } from "./column-content.js";
import type { HeaderMeaning } from "./header-meaning.js";

/** How a column writes levels: dBm, dBm without its sign, hundredths of a dBm, or a quality from 0 to 100. */
export type LevelStyle = "dbm" | "unsigned" | "hundredths" | "quality";

/** How a column writes airtime: as a share of 1, of 100 or of 255. */
export type AirtimeStyle = "of 1" | "of 100" | "of 255";

/**
 * How a column that holds levels writes them; what stands there outranks the header. Numbers without a
 * minus, up to 100, are a quality, unless the header says dBm: then they have lost their sign.
 * @returns null where the column can't hold levels
 */
export function levelStyle(content: ColumnContent, header: HeaderMeaning | null): LevelStyle | null {
  if (content.filledCount === 0) return header?.meaning === "quality" ? "quality" : "dbm";
  if (!mostly(content, "numberCount", 0.5)) return null;
  if (content.hundredthCount * 2 > content.numberCount) return "hundredths";
  if (content.negativeCount > 0) return "dbm";
  if (content.shareCount < 0.8 * content.numberCount) return header === null ? null : "dbm";
  const saysDbm = header !== null && (header.unit === "dbm" || header.meaning === "signal_dbm");
  const namesUnit = header?.unit === "dbm";
  if (namesUnit && saysDbm && content.unsignedCount >= 0.8 * content.numberCount) return "unsigned";
  return "quality";
}

/**
 * A column's cell as a level.
 * @example styledDbm(70, "quality"); // => -65
 * @param value as written
 * @returns dBm
 * @source quality N → N/2 − 100 dBm: common practice, no source
 */
export function styledDbm(value: number, style: LevelStyle): number | null {
  if (style === "dbm") return value;
  if (style === "hundredths") return value / 100;
  if (style === "unsigned") return value > 0 ? -value : value;
  return value >= 0 && value <= 100 ? value / 2 - 100 : null;
}

/** @returns of what the figures of a load column are shares */
export function airtimeStyle(content: ColumnContent, header: HeaderMeaning | null): AirtimeStyle {
  if (header?.unit === "%" || content.percentSignCount > 0) return "of 100";
  if (!(content.highest.value > 1)) return "of 1";
  return content.highest.value <= 100 ? "of 100" : "of 255";
}

const WHOLES = { "of 1": 1, "of 100": 100, "of 255": 255 } as const;

/**
 * A column's cell as airtime.
 * @param value as written
 * @example styledRatio(51, "of 255"); // => 0.2
 */
export function styledRatio(value: number, style: AirtimeStyle): number {
  return value / WHOLES[style];
}
