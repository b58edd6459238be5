import { emitterKinds } from "../venue/index.js";
import type { Venue } from "../venue/index.js";

/** Names of the venue file's emitters that are taken as on every frequency: neither they nor their kind have one. */
export function unplacedEmitters({ emitters }: Venue): string[] {
  return emitters
    .filter(({ type, centreMhz }) => {
      const kind = emitterKinds[type];
      return (centreMhz ?? kind.centreMhz) === null && kind.hopStepMhz === null;
    })
    .map(({ name }) => name);
}
