import { createHash } from "node:crypto";

/** The digest that a policy names a style or script by. */
export function sha256Base64(text: string): string {
  return createHash("sha256").update(text, "utf8").digest("base64");
}

export interface Tag {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
}

/** The opening tags of a page whose texts and attributes hold no bare `<` or `>`; style and script left out. */
export function tagsOf(html: string): Tag[] {
  const bare = html.replace(/<(style|script)>[^]*?<\/\1>/g, "<$1></$1>");
  return [...bare.matchAll(/<([a-z][a-z0-9]*)((?:\s[^<>]*)?)>/gi)].map(([, name, rest]) => ({
    name: name!.toLowerCase(),
    attributes: new Map([...rest!.matchAll(/([^\s=]+)="([^"]*)"/g)].map(([, key, value]) => [key!, value!])),
  }));
}

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };

/** Text of a piece of HTML as a reader sees it, markup left out. */
export function textOf(html: string): string {
  return html
    .replace(/<[^<>]*>/g, "")
    .replace(/&(amp|lt|gt|quot|#39);/g, (_, name: string) => ENTITIES[name]!);
}

export interface PageFigure {
  readonly value: string;
  readonly from: string;
  readonly unit: string | null;
  /** One text, or one a system of units. */
  readonly texts: readonly string[];
}

/** Every figure of a page; one that doesn't start with a slash goes on from the `data-at` of the element around it. */
export function figuresOf(html: string): PageFigure[] {
  const found = html.matchAll(
    /<(?:tr|div class="label")(?: data-at="([^"]*)")?>|<data value="([^"]*)" data-from="([^"]*)"(?: data-unit="([^"]*)")?(?: title="[^"]*")?>([^]*?)<\/data>/g,
  );
  let base = "";
  return [...found].flatMap(([tag, at, value, from, unit, inner]) => {
    if (!tag.startsWith("<data")) {
      base = at ?? "";
      return [];
    }
    const spans = [...inner!.matchAll(/<span class="(?:m|ft)">([^<]*)<\/span>/g)].map(([, text]) =>
      textOf(text!),
    );
    const texts = spans.length > 0 ? spans : textOf(inner!).replace(")", "").split(" (");
    const pointer = textOf(from!);
    const whole = pointer.startsWith("/") ? pointer : `${base}/${pointer}`;
    return [{ value: value!, from: whole, unit: unit ?? null, texts }];
  });
}
