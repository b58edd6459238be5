import type { Picture } from "../picture.js";
import { markup, trusted } from "./markup.js";
import type { Markup } from "./markup.js";

/** Pictures by what they show, in the order of the kinds asked for. */
export function picturesOf(pictures: readonly Picture[], kinds: readonly string[]): Picture[] {
  return kinds.flatMap((kind) => pictures.filter(({ name }) => name === kind || name.startsWith(`${kind}-`)));
}

/** Pictures of no kind that is asked for. */
export function otherPictures(pictures: readonly Picture[], kinds: readonly string[]): Picture[] {
  const asked = new Set(picturesOf(pictures, kinds));
  return pictures.filter((picture) => !asked.has(picture));
}

/** Pictures under their titles; each says its figures in words to those who can't see it. */
export function pictureMarkup(pictures: readonly Picture[]): Markup {
  const figures = pictures.map(
    ({ name, title, svg }) => markup`<figure id="picture-${name}">
<figcaption>${title}</figcaption>
${trusted(svg)}
</figure>
`,
  );
  return markup`<div class="pictures">\n${figures}</div>\n`;
}
