import { createHash } from "node:crypto";
import { basename } from "node:path";
import { hangCsv, linksCsv, patchCsv } from "../report/index.js";
import type { CsvTable, PlanFile, PlanReport } from "../report/index.js";
import { csvText } from "./csv-text.js";
import { jsonText } from "./json-text.js";
import type { FolderContent } from "./write-folder.js";

/** Where a plan's folders go. */
export interface PlanPlaces {
  /** Null: the plan's own folder is not asked for. */
  readonly folder: string | null;
  /** Null: the pictures are not asked for alone. */
  readonly pictures: string | null;
  readonly force: boolean;
}

/** A folder that a plan writes. */
export interface PlanFolder {
  readonly path: string;
  readonly content: FolderContent;
  /** For the one who reads what was written. */
  readonly told: readonly PlanFile[];
}

/** The folders before there is anything to write into them: what stands there can be looked at. */
export function planPlaces({ folder, pictures, force }: PlanPlaces): PlanFolder[] {
  const empty = (path: string, isOwn: FolderContent["isOwn"]): PlanFolder => ({
    path,
    content: { files: new Map(), force, isOwn },
    told: [],
  });
  return [
    ...(folder === null ? [] : [empty(folder, (name) => FILES.some((file) => file.name === name))]),
    ...(pictures === null ? [] : [empty(pictures, (name) => name.endsWith(".svg"))]),
  ];
}

/**
 * Every file of the plan's folders. The page and its pictures are drawn by code that no other command needs: it is
 * loaded here.
 */
export async function planFolders(
  places: PlanPlaces,
  report: PlanReport,
  json: object,
): Promise<PlanFolder[]> {
  const empty = planPlaces(places);
  if (empty.length === 0) return [];
  const { planPage, planPictures, standaloneSvg } = await import("../page/index.js");
  const pictures = planPictures(report);
  const sheets: ReadonlyMap<string, string> = new Map([
    ["report.html", planPage(report, json, pictures, sha256Base64)],
    ["plan.json", jsonText(json)],
    ...tablesOf(report),
  ]);
  const svgs: ReadonlyMap<string, string> = new Map(
    pictures.map((picture) => [`${picture.name}.svg`, standaloneSvg(picture)]),
  );
  return empty.map(({ path, content }) => {
    const files = path === places.folder ? sheets : svgs;
    const told =
      path === places.folder
        ? FILES.filter(({ name }) => sheets.has(name))
        : pictures.map(({ name, title }) => ({ name: `${name}.svg`, words: title }));
    return { path, content: { ...content, files }, told };
  });
}

/** Beside the venue file's name, where the command runs. */
export function defaultFolder(venuePath: string): string {
  return venuePath === "-" ? "venue-plan" : `${basename(venuePath).replace(/\.[a-z]+$/i, "")}-plan`;
}

const FILES: readonly PlanFile[] = [
  { name: "report.html", words: "for everybody: open it in a browser, print its sheets" },
  { name: "plan.json", words: "for stillband verify and other programs: keep it" },
  { name: "links.csv", words: "every receiver's link" },
  { name: "patch.csv", words: "DMX addresses, for the operator" },
  { name: "hang.csv", words: "drops, chains and cords, for the riggers" },
  { name: "circuits.csv", words: "circuits and cords, for the electrician" },
  { name: "order.csv", words: "what to order, for the office" },
];

function tablesOf({ links, patch, hang, rooms }: PlanReport): [name: string, text: string][] {
  const { units } = rooms.venue;
  const tables: [string, CsvTable][] = [
    ["links.csv", linksCsv(links)],
    ...(patch === null ? [] : [["patch.csv", patchCsv(patch)] as [string, CsvTable]]),
    ...(hang === null
      ? []
      : (["hang", "circuits", "order"] as const).map((sheet): [string, CsvTable] => [
          `${sheet}.csv`,
          hangCsv(hang, sheet, units),
        ])),
  ];
  return tables.map(([name, table]) => [name, csvText(table)]);
}

/** As a Content-Security-Policy names what a page may hold. */
function sha256Base64(text: string): string {
  return createHash("sha256").update(text).digest("base64");
}
