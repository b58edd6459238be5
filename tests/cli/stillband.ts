import { spawn } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Readable, Writable } from "node:stream";
import { main } from "../../src/cli/index.js";

export const PROJECT = join(import.meta.dirname, "../..");
export const BIN = join(PROJECT, "bin/stillband.js");
export const SCANS = "fixtures/scans";
export const EMPTY = `${SCANS}/ropewalk-empty.csv`;
export const FULL = `${SCANS}/ropewalk-full.csv`;
export const FOYER = `${SCANS}/ropewalk-foyer-iw.txt`;
export const CROWDED = `${SCANS}/crowded.csv`;
/** The scans of README's first command. */
export const DEMO = [EMPTY, FULL, "--place", "foyer", "--crowd", "part", FOYER] as const;

if (!existsSync(join(PROJECT, "dist/cli/index.js"))) throw new Error("dist is missing: npm run build first");

export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface RunOptions {
  readonly stdin?: string | Buffer;
  readonly env?: Readonly<Record<string, string>>;
  readonly cwd?: string;
}

/** Runs a program to its end; nothing of this process's environment but PATH reaches it. */
export function run(program: string, args: readonly string[], options: RunOptions = {}): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, {
      cwd: options.cwd ?? PROJECT,
      env: { PATH: process.env["PATH"], ...options.env },
    });
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    child.stdout.on("data", (chunk: Buffer) => out.push(chunk));
    child.stderr.on("data", (chunk: Buffer) => err.push(chunk));
    child.on("error", reject);
    child.on("close", (code) =>
      resolve({ code, out: Buffer.concat(out).toString("utf8"), err: Buffer.concat(err).toString("utf8") }),
    );
    child.stdin.on("error", () => undefined);
    child.stdin.end(options.stdin ?? "");
  });
}

/** The real command, as a process. */
export function stillband(args: readonly string[], options: RunOptions = {}): Promise<Ended> {
  return run(process.execPath, [BIN, ...args], options);
}

export interface Terminal {
  readonly isTTY?: boolean;
  readonly columns?: number;
  readonly env?: Readonly<Record<string, string>>;
  readonly stdin?: string;
}

/** The command as a function of this process, on a terminal of our own making. */
export async function inProcess(args: readonly string[], terminal: Terminal = {}): Promise<Ended> {
  const out = new Sink(terminal);
  const err = new Sink(terminal);
  const stdin = Readable.from([Buffer.from(terminal.stdin ?? "")]);
  const code = await main(args, { out, err, stdin, env: terminal.env ?? {} });
  return { code, out: out.text(), err: err.text() };
}

class Sink extends Writable {
  readonly isTTY: boolean;
  readonly columns: number;
  readonly #chunks: Buffer[] = [];
  constructor({ isTTY = false, columns = 80 }: Terminal) {
    super();
    this.isTTY = isTTY;
    this.columns = columns;
  }
  override _write(chunk: Buffer, _encoding: string, done: () => void): void {
    this.#chunks.push(chunk);
    done();
  }
  text(): string {
    return Buffer.concat(this.#chunks).toString("utf8");
  }
}

export interface GoldenCase {
  readonly file: string;
  readonly args: readonly string[];
  /** Exit code; 0 unless given. */
  readonly exit?: number;
}

export const GOLDEN = join(PROJECT, "fixtures/golden");

export function goldenCases(): GoldenCase[] {
  return JSON.parse(readFileSync(join(GOLDEN, "cases.json"), "utf8")) as GoldenCase[];
}

/** The block that opens a report: everything before its first blank line. */
export function firstBlock(text: string): string[] {
  const lines = text.split("\n");
  return lines.slice(0, lines.indexOf(""));
}
