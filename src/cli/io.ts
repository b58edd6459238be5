import type { Readable, Writable } from "node:stream";

/** The process as the CLI sees it: tests hand in their own. */
export interface Io {
  readonly out: Writable & { readonly isTTY?: boolean; readonly columns?: number };
  readonly err: Writable & { readonly isTTY?: boolean };
  readonly stdin: Readable;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** Writes and waits until it is out; a reader that has gone away is not an error. */
export function write(stream: Writable, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    stream.write(text, (error) => {
      const code = error && "code" in error ? error.code : undefined;
      if (!error || code === "EPIPE" || code === "ERR_STREAM_DESTROYED") resolve();
      else reject(error);
    });
  });
}
