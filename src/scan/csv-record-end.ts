import { LONGEST_RECORD_COUNT } from "./scan-limits.js";

const QUOTE = 0x22;
const LINE_FEED = 0x0a;
const RETURN = 0x0d;

/**
 * Where a record that starts somewhere in a text ends.
 * - `record`: up to `endIndex` (exclusive, its line end included); it spans `lineCount` physical lines.
 * - `broken`: its quotes are not those of a table; `endIndex` is the end of its first physical line.
 * - `limit`: no end within the longest record allowed.
 * - `more`: the end hasn't been read yet.
 */
export interface RecordEnd {
  readonly kind: "record" | "broken" | "limit" | "more";
  readonly endIndex: number;
  readonly lineCount: number;
}

/**
 * Finds the end of a CSV record. A line ends with LF, CR LF or a lone CR. A quote opens only at the start
 * of a cell; inside, a doubled quote stands for one; after the closing quote comes a delimiter or a line
 * end, else the record is broken.
 * @param isLast nothing follows the text
 * @source RFC 4180 section 2 (the lone CR is an addition)
 * @example csvRecordEnd('"a\n""b""",c\nd', 0, ",", true); // => { kind: "record", endIndex: 12, lineCount: 2 }
 */
export function csvRecordEnd(
  text: string,
  startIndex: number,
  delimiter: string,
  isLast: boolean,
): RecordEnd {
  const delimiterCode = delimiter.charCodeAt(0);
  const windowIndex = Math.min(text.length, startIndex + LONGEST_RECORD_COUNT);
  let lineCount = 1;
  let atCellStart = true;
  let index = startIndex;
  while (index < windowIndex) {
    const code = text.charCodeAt(index);
    if (code === QUOTE && atCellStart) {
      const closeIndex = closingQuote(text, index + 1, windowIndex);
      if (closeIndex === -1) return unclosed(text, startIndex, windowIndex, isLast);
      if (closeIndex + 1 >= text.length && !isLast) return MORE;
      lineCount += lineEnds(text, index, closeIndex);
      index = closeIndex + 1;
      if (index < text.length && !endsCell(text.charCodeAt(index), delimiterCode))
        return firstLine(text, startIndex, windowIndex, isLast);
      atCellStart = false;
    } else if (code === LINE_FEED) return { kind: "record", endIndex: index + 1, lineCount };
    else if (code === RETURN) {
      if (index + 1 >= text.length && !isLast) return MORE;
      return {
        kind: "record",
        endIndex: index + (text.charCodeAt(index + 1) === LINE_FEED ? 2 : 1),
        lineCount,
      };
    } else {
      atCellStart = code === delimiterCode;
      index++;
    }
  }
  if (windowIndex - startIndex === LONGEST_RECORD_COUNT) return LIMIT;
  return isLast ? { kind: "record", endIndex: text.length, lineCount } : MORE;
}

const MORE: RecordEnd = { kind: "more", endIndex: -1, lineCount: 0 };
const LIMIT: RecordEnd = { kind: "limit", endIndex: -1, lineCount: 0 };

function endsCell(code: number, delimiterCode: number): boolean {
  return code === delimiterCode || code === LINE_FEED || code === RETURN;
}

/** @returns index of the closing quote; -1 when there is none before `windowIndex` */
function closingQuote(text: string, fromIndex: number, windowIndex: number): number {
  let index = text.indexOf('"', fromIndex);
  while (index !== -1 && index < windowIndex) {
    if (text.charCodeAt(index + 1) !== QUOTE) return index;
    index = text.indexOf('"', index + 2);
  }
  return -1;
}

function unclosed(text: string, startIndex: number, windowIndex: number, isLast: boolean): RecordEnd {
  const isFull = windowIndex - startIndex === LONGEST_RECORD_COUNT;
  return isFull || isLast ? firstLine(text, startIndex, windowIndex, isLast) : MORE;
}

/** The first physical line of a record whose quotes are wrong: only that line is given up. */
function firstLine(text: string, startIndex: number, windowIndex: number, isLast: boolean): RecordEnd {
  for (let index = startIndex; index < windowIndex; index++) {
    const code = text.charCodeAt(index);
    if (code !== LINE_FEED && code !== RETURN) continue;
    if (code === RETURN && index + 1 >= text.length && !isLast) return MORE;
    const isPair = code === RETURN && text.charCodeAt(index + 1) === LINE_FEED;
    return { kind: "broken", endIndex: index + (isPair ? 2 : 1), lineCount: 1 };
  }
  if (windowIndex - startIndex === LONGEST_RECORD_COUNT) return LIMIT;
  return isLast ? { kind: "broken", endIndex: text.length, lineCount: 1 } : MORE;
}

function lineEnds(text: string, fromIndex: number, toIndex: number): number {
  let endCount = 0;
  for (let index = fromIndex; index < toIndex; index++) {
    const code = text.charCodeAt(index);
    if (code === LINE_FEED || (code === RETURN && text.charCodeAt(index + 1) !== LINE_FEED)) endCount++;
  }
  return endCount;
}
