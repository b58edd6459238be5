/** Reads a picture back: a strict little reader of the XML that an SVG file may hold, so that what is ill-formed fails. */

export interface SvgElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly SvgElement[];
  /** Its own text, entities resolved. */
  readonly text: string;
}

const TOKEN = /<\/([a-zA-Z]+)>|<([a-zA-Z]+)((?:\s+[a-zA-Z][\w:-]*="[^"<]*")*)\s*(\/?)>|([^<>]+)/y;
const ENTITIES: Readonly<Record<string, string>> = {
  "&amp;": "&",
  "&lt;": "<",
  "&gt;": ">",
  "&quot;": '"',
  "&#39;": "'",
};

/** @throws {Error} where a tag is not closed, closed twice, or anything stands that is neither tag nor text */
export function readSvg(svg: string): SvgElement {
  const root = { name: "", attributes: new Map<string, string>(), children: [] as SvgElement[], text: "" };
  const open = [root];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < svg.length) {
    const at = TOKEN.lastIndex;
    const match = TOKEN.exec(svg);
    if (match === null) throw new Error(`neither a tag nor text: ${svg.slice(at, at + 60)}`);
    const [, closed, opened, attributes = "", isEmpty, text] = match;
    const last = open[open.length - 1]!;
    if (text !== undefined) last.text += resolved(text);
    else if (closed !== undefined) {
      if (open.length === 1 || last.name !== closed) throw new Error(`</${closed}> closes <${last.name}>`);
      open.pop();
    } else {
      const made = { name: opened!, attributes: attributesOf(attributes), children: [], text: "" };
      last.children.push(made);
      if (isEmpty === "") open.push(made);
    }
  }
  if (open.length !== 1) throw new Error(`<${open[open.length - 1]!.name}> is not closed`);
  if (root.children.length !== 1 || root.text.trim() !== "") throw new Error("not one element alone");
  return root.children[0]!;
}

function attributesOf(text: string): Map<string, string> {
  const found = [...text.matchAll(/([a-zA-Z][\w:-]*)="([^"]*)"/g)].map(
    ([, key, value]) => [key!, resolved(value!)] as const,
  );
  if (new Set(found.map(([key]) => key)).size !== found.length)
    throw new Error(`an attribute twice: ${text}`);
  return new Map(found);
}

function resolved(text: string): string {
  return text.replace(/&[^;\s]*;?/g, (entity) => {
    const character = ENTITIES[entity];
    if (character === undefined) throw new Error(`no entity: ${entity}`);
    return character;
  });
}

/** An element and all beneath it. */
export function allOf(element: SvgElement): SvgElement[] {
  return [element, ...element.children.flatMap(allOf)];
}

/** Those of a class, by one of its words. */
export function ofClass(root: SvgElement, word: string): SvgElement[] {
  return allOf(root).filter(({ attributes }) => attributes.get("class")?.split(" ").includes(word));
}

/** The only one of a class. */
export function theOne(root: SvgElement, word: string): SvgElement {
  const found = ofClass(root, word);
  if (found.length !== 1) throw new Error(`${found.length} elements of class ${word}`);
  return found[0]!;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The corners that a path of straight lines goes through, relative steps made absolute. */
export function pathPoints({ attributes }: SvgElement): Point[] {
  const points: Point[] = [];
  let [x, y] = [0, 0];
  let start = { x, y };
  for (const [, command, list] of attributes.get("d")!.matchAll(/([MLHVhvmZ])([^MLHVhvmZ]*)/g)) {
    const values =
      list!.trim() === ""
        ? []
        : list!
            .trim()
            .split(/[ ,]|(?<=\d)(?=-)/)
            .map(Number);
    if (values.some((value) => !Number.isFinite(value))) throw new Error(`no number: ${command}${list}`);
    const [first = NaN, second = NaN] = values;
    if (command === "M" || command === "L") [x, y] = [first, second];
    else if (command === "m") [x, y] = [x + first, y + second];
    else if (command === "H") x = first;
    else if (command === "V") y = first;
    else if (command === "h") x += first;
    else if (command === "v") y += first;
    else ({ x, y } = start);
    if (command === "M") start = { x, y };
    points.push({ x, y });
  }
  return points;
}

/** The box around an element's own points. */
export function boxOf(element: SvgElement): { left: number; right: number; top: number; bottom: number } {
  const points = pathPoints(element);
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** The middle of a mark: of a ring its centre, of lines the middle of the box around them. */
export function middleOf(element: SvgElement): Point {
  const own = element.name === "g" ? element.children[0]! : element;
  if (own.name === "circle")
    return { x: Number(own.attributes.get("cx")), y: Number(own.attributes.get("cy")) };
  const { left, right, top, bottom } = boxOf(own);
  return { x: (left + right) / 2, y: (top + bottom) / 2 };
}

/** Where texts stand. */
export function textsOf(root: SvgElement): { text: string; x: number; y: number }[] {
  return allOf(root)
    .filter(({ name }) => name === "text")
    .map(({ text, attributes }) => ({
      text,
      x: Number(attributes.get("x")),
      y: Number(attributes.get("y")),
    }));
}
