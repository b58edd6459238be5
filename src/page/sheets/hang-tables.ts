import { cordOf, hangNote, nameOf, weightVerdict } from "../../report/index.js";
import type { HangReport } from "../../report/index.js";
import type { Content } from "../html/markup.js";
import { columnsOf, measured, table } from "../html/table.js";
import type { Column } from "../html/table.js";
import type { PageParts } from "../page-parts.js";

const BLANK = { none: "____" };

/** Columns of lengths. */
function lengths(...heads: readonly string[]): Column[] {
  return heads.map((head) => measured(head, "m", "ft in"));
}

function groupOf({ room, group }: { readonly room: string; readonly group: string | null }): string {
  return group === null || group === room ? nameOf(room) : `${nameOf(room)}, ${nameOf(group)}`;
}

/** What is cut and hung, a row a luminaire in the order of hanging. */
export function cutTable({ plan }: HangReport, { figures }: PageParts): Content {
  const rows = plan.hang.rows.map((row, index) => {
    const at = `/hang/hang/rows/${String(index)}`;
    const { from } = cordOf(plan, row);
    return [
      nameOf(row.name),
      groupOf(row),
      figures.length("cut", `${at}/trimHeightM`, BLANK),
      figures.length("cut", `${at}/trimAboveLineM`, BLANK),
      figures.figure("count", `${at}/stepCount`, { none: row.suspensionM === null ? "____" : "-" }),
      figures.length("cut", `${at}/suspensionM`, BLANK),
      row.suspension,
      figures.length("cut", `${at}/cordToCut/lengthM`, BLANK),
      figures.length("cut", `${at}/safetyM`, BLANK),
      hangNote(row, from),
    ];
  });
  const columns = [
    ...columnsOf("luminaire", "room, row"),
    ...lengths("trim", "above line"),
    ...columnsOf("-links"),
    ...lengths("length"),
    ...columnsOf("by"),
    ...lengths("cord", "safety"),
    ...columnsOf("note"),
  ];
  return table({ id: "cut", caption: "Cut and hang", columns, rows });
}

/** Pieces to a level, spread and who is out of it. */
export function levelTable({ plan }: HangReport, { figures }: PageParts): Content {
  const rows = plan.hang.levels.map((level, index) => {
    const at = `/hang/hang/levels/${String(index)}`;
    return [
      groupOf(level),
      level.names.map(nameOf).join(", "),
      figures.length("cut", `${at}/trimHeightM`),
      figures.length("cut", `${at}/spreadM`),
      level.uneven.length === 0 ? "none" : level.uneven.map(nameOf).join(", "),
    ];
  });
  const columns = [
    ...columnsOf("room, row", "hung"),
    ...lengths("trim", "spread"),
    ...columnsOf("uneven to the eye"),
  ];
  return table({ id: "levels", caption: "Luminaires that must look level", columns, rows });
}

const SLOPE = { needed: "swivel", "not-needed": "to 5°", unknown: "____" } as const;

/** How each length comes about, and how far above trim it ends. */
export function heightTable({ plan }: HangReport, { figures }: PageParts): Content {
  const keys = ["ceilingHeightM", "hardwareM", "bodyHeightM", "dropM", "trimErrorM"];
  const rows = plan.hang.rows.map(({ name, swivelCanopy }, index) => [
    nameOf(name),
    ...keys.map((key) => figures.length("cut", `/hang/hang/rows/${String(index)}/${key}`, BLANK)),
    SLOPE[swivelCanopy],
  ]);
  const columns = [
    ...columnsOf("luminaire"),
    ...lengths("ceiling", "− hardware", "− body", "drop", "off trim"),
    ...columnsOf("slope"),
  ];
  const caption = "Drop = ceiling − trim − hardware − body";
  return table({ id: "heights", caption, columns, rows, alikeIndex: [1, 2, 3, 4, 5, 6] });
}

/** Weight against the figures that were typed in: within or beyond, never safe. */
export function weightTable({ plan }: HangReport, { figures }: PageParts): Content {
  const rows = plan.hang.rows.map((row, index) => {
    const at = `/hang/hang/rows/${String(index)}/load`;
    const known = figures.length("weight", `${at}/knownKg`);
    return [
      nameOf(row.name),
      row.load.totalKg === null ? ["over ", known] : figures.length("weight", `${at}/totalKg`),
      ...row.load.checks.map(({ verdict }, check) => [
        verdict === "beyond" ? "! " : "",
        figures.length("weight", `${at}/checks/${String(check)}/ratedKg`, { none: "NOT GIVEN" }),
      ]),
      weightVerdict(row),
    ];
  });
  const heads = ["luminaire", "-weight", "-chain", "-hook", "-box or support", "-safety", "figures typed in"];
  return table({
    id: "weights",
    caption: "Weight against the ratings typed in",
    columns: columnsOf(...heads),
    rows,
  });
}
