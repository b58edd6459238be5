import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";

export interface Scratch {
  readonly folder: string;
  /** Writes a file. @returns its path */
  readonly file: (name: string, content: string | Buffer) => string;
}

/** A folder for a test file's own files, gone when its tests are done. */
export function scratch(): Scratch {
  const folder = mkdtempSync(join(tmpdir(), "stillband-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return {
    folder,
    file: (name, content) => {
      const path = join(folder, name);
      writeFileSync(path, content);
      return path;
    },
  };
}
