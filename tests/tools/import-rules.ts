/** Who may import whom, as functions on paths relative to src, "/"-separated, with the .js of the import. */

export interface Import {
  /** The importing file, relative to src. */
  readonly file: string;
  /** The imported file, relative to src, or the package as written. */
  readonly target: string;
  readonly relative: boolean;
  readonly typeOnly: boolean;
}

const BASE = ["issues", "units", "numeric"];

/** Each room and the rooms it may import, beside itself. */
export const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  issues: [],
  units: ["issues"],
  numeric: ["issues"],
  band: BASE,
  patch: BASE,
  install: BASE,
  radio: [...BASE, "band"],
  scan: [...BASE, "band", "radio"],
  scorer: [...BASE, "band", "radio"],
  propagation: [...BASE, "radio"],
  quality: [...BASE, "radio", "propagation"],
  commissioning: [...BASE, "radio", "propagation", "scan"],
  venue: [...BASE, "band", "radio", "propagation", "scorer", "quality", "patch", "install"],
  report: ["issues", "units"],
  page: ["issues", "units", "report"],
};
export const ROOMS = [...Object.keys(MAY_IMPORT), "cli"];

/** Rooms that write down what the models found: they may know the models' types, as types alone. */
const WRITERS = new Set(["report", "page"]);

/** Packages that the core stands on; all others are the command's. */
const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  "d3-array": Object.keys(MAY_IMPORT).filter((room) => room !== "issues"),
  "csv-parse/sync": ["scan"],
  "d3-contour": ["page"],
  "d3-scale": ["page"],
  "d3-shape": ["page"],
};

/** @returns the broken rule in words, or undefined */
export function brokenRule(found: Import): string | undefined {
  const { file, target, relative } = found;
  const room = file.includes("/") ? file.split("/")[0]! : "";
  if (room !== "" && !ROOMS.includes(room)) return `${file}: ${room} is no known room`;
  if (!relative) return brokenPackageRule(file, room, target);
  const [other = "", door = ""] = target.split("/");
  if (room !== "" && room === other) return undefined;
  if (target.startsWith("..") || !ROOMS.includes(other)) return `${file}: ${target} is in no room`;
  if (door !== "index.js" || target.split("/").length !== 2) return `${file}: enters ${other} past its index`;
  return brokenRoomRule(found, room, other);
}

function brokenRoomRule({ file, typeOnly }: Import, room: string, other: string): string | undefined {
  if (other === "cli") return `${file}: nothing may import cli`;
  if (room === "cli" || room === "") return undefined;
  if (MAY_IMPORT[room]!.includes(other)) return undefined;
  if (!WRITERS.has(room) || WRITERS.has(other)) return `${file}: ${room} may not import ${other}`;
  return typeOnly ? undefined : `${file}: ${room} may import ${other} as type only`;
}

function brokenPackageRule(file: string, room: string, target: string): string | undefined {
  if (room === "cli") return undefined;
  if (target.startsWith("node:")) return `${file}: ${target} belongs in cli`;
  return PACKAGES[target]?.includes(room) ? undefined : `${file}: ${target} belongs in cli`;
}

/** @returns every import cycle among the files of one room, each from its first file in order of name */
export function importCycles(imports: readonly Import[]): string[][] {
  const targets = new Map<string, string[]>();
  for (const { file, target, relative } of imports) {
    const within = relative && file.split("/")[0] === target.split("/")[0];
    if (within) targets.set(file, [...(targets.get(file) ?? []), target.replace(/\.js$/, ".ts")]);
  }
  const cycles: string[][] = [];
  const done = new Set<string>();
  const walk = (file: string, path: readonly string[]): void => {
    const start = path.indexOf(file);
    if (start >= 0) cycles.push([...path.slice(start), file]);
    if (start >= 0 || done.has(file)) return;
    for (const next of targets.get(file) ?? []) walk(next, [...path, file]);
    done.add(file);
  };
  for (const file of [...targets.keys()].sort()) walk(file, []);
  return cycles;
}
