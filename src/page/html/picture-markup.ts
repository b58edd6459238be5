import type { Picture } from "../picture.js";
import { markup, trusted } from "./markup.js";
import type { Content } from "./markup.js";

/** Pictures by what they show, in the order of the kinds asked for. */
export function picturesOf(pictures: readonly Picture[], kinds: readonly string[]): Picture[] {
  return kinds.flatMap((kind) => pictures.filter(({ name }) => name === kind || name.startsWith(`${kind}-`)));
}

/** Pictures of no kind that is asked for. */
export function otherPictures(pictures: readonly Picture[], kinds: readonly string[]): Picture[] {
  const asked = new Set(picturesOf(pictures, kinds));
  return pictures.filter((picture) => !asked.has(picture));
}

/** Pictures under their titles, their figures in words beneath. */
export function pictureMarkup(pictures: readonly Picture[]): Content {
  return pictures.map(
    ({ name, title, description, svg }) => markup`<figure id="picture-${name}">
<figcaption>${title}</figcaption>
<div class="scroll" role="region" aria-label="${title}" tabindex="0">${trusted(svg)}</div>
<details><summary>The figures in words</summary><p>${description}</p></details>
</figure>
`,
  );
}
