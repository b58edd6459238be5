import type { Io } from "./io.js";

/** How long a reader waits before it is told how long it will take, ms, and how often after that. */
const FIRST_MS = 1000;
const EVERY_MS = 250;

/** Tells on a terminal how far reading has come. */
export interface Progress {
  /** Counts bytes as they are read. */
  readonly read: (byteCount: number) => void;
  /** Clears the line; nothing was shown before a second had passed. */
  readonly end: () => void;
}

const SILENT: Progress = { read: () => undefined, end: () => undefined };

/**
 * Progress of reading one input: bytes, rate and time left on standard error, from the second on; nothing
 * where standard error is no terminal, or with --quiet or --json.
 * @param totalBytes null where it can't be known, as on standard input
 * @param nowMs the clock
 */
export function progressOf(
  source: string,
  totalBytes: number | null,
  { err }: Io,
  { quiet, json }: { readonly quiet?: boolean; readonly json?: boolean },
  nowMs: () => number = () => performance.now(),
): Progress {
  if (err.isTTY !== true || quiet === true || json === true) return SILENT;
  const startMs = nowMs();
  let shownMs = startMs + FIRST_MS - EVERY_MS;
  let shown = false;
  let readBytes = 0;
  return {
    read: (byteCount) => {
      readBytes += byteCount;
      const now = nowMs();
      if (now - shownMs < EVERY_MS) return;
      shownMs = now;
      shown = true;
      err.write(`\r\u001b[K${progressWords(source, readBytes, totalBytes, now - startMs)}`);
    },
    end: () => {
      if (shown) err.write("\r\u001b[K");
    },
  };
}

/** @example progressWords("log.csv", 5e7, 1e8, 2000); // => "log.csv: 50 of 100 MB, 25 MB/s, 2 s left" */
export function progressWords(
  source: string,
  readBytes: number,
  totalBytes: number | null,
  elapsedMs: number,
): string {
  const mega = (bytes: number): string => (bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0);
  const perS = readBytes / (elapsedMs / 1000);
  const rate = `${mega(perS)} MB/s`;
  if (totalBytes === null) return `${source}: ${mega(readBytes)} MB, ${rate}`;
  const leftS = Math.max(0, Math.ceil((totalBytes - readBytes) / perS));
  return `${source}: ${mega(readBytes)} of ${mega(totalBytes)} MB, ${rate}, ${leftS} s left`;
}
