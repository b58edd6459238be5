/** What tells long work to end. The platform's `AbortSignal` is one; so is any object with these two. */
export interface StopSignal {
  /** Looked at again and again while the work goes on; it may be a getter. */
  readonly aborted: boolean;
  /** What is thrown then; an error named `AbortError` where there is none. */
  readonly reason?: unknown;
}

/** How far long work has come. */
export interface WorkProgress {
  /**
   * What is counted: `reading` characters or bytes of a scan; `channels` of a ranking; `receivers`, `systems` of a
   * venue; `search` looks of a search for joint channels, each some 32 nodes; `places` margins looked up for one.
   */
  readonly part: "reading" | "channels" | "receivers" | "systems" | "search" | "places";
  readonly doneCount: number;
  /** Null where nobody can know. */
  readonly totalCount: number | null;
}

/**
 * Options of work that can take a while. It is synchronous but for `readScan`: on a thread that does nothing else a
 * timer can't fire meanwhile, so a worker is told to end through shared memory
 * (`{ get aborted() { return Atomics.load(flag, 0) === 1; } }`), by a clock
 * (`{ get aborted() { return performance.now() > endMs; } }`) or from `onProgress`.
 */
export interface LongWork {
  /** Once it is aborted the work throws its reason, and nothing is returned. */
  readonly signal?: StopSignal | undefined;
  /** Told now and then how far the work has come; what it throws ends the work. */
  readonly onProgress?: ((progress: WorkProgress) => void) | undefined;
}

/**
 * Ends work that is no longer wanted.
 * @param signal what may have been aborted; none never is
 * @returns nothing, where the work is to go on
 * @throws the signal's reason, or an error named `AbortError`, when it is aborted
 * @example throwIfAborted(undefined); // => undefined
 * throwIfAborted({ aborted: true }); // => throws AbortError
 */
export function throwIfAborted(signal: StopSignal | undefined): void {
  if (signal?.aborted !== true) return;
  if (signal.reason !== undefined) throw signal.reason as Error;
  const error = new Error("the work was aborted");
  error.name = "AbortError";
  throw error;
}

/**
 * One step of long work: ends it where it is no longer wanted, else tells how far it has come.
 * @throws as throwIfAborted, and whatever `onProgress` throws
 */
export function tellProgress(
  { signal, onProgress }: LongWork,
  part: WorkProgress["part"],
  doneCount: number,
  totalCount: number | null,
): void {
  throwIfAborted(signal);
  onProgress?.({ part, doneCount, totalCount });
}
