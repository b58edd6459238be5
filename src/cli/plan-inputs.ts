import { createHash } from "node:crypto";
import type { PlanInput } from "../commissioning/index.js";
import { withInput } from "./input.js";
import type { Io } from "./io.js";
import type { VenueInput } from "./load-venue.js";

/**
 * The digests of the files that a plan was made from.
 * @throws {CliError} exit 66 where one can't be read any more
 */
export async function planInputs(inputs: readonly VenueInput[], io: Io): Promise<PlanInput[]> {
  const found: PlanInput[] = [];
  for (const { name, kind, path, text } of inputs) {
    const hash = createHash("sha256");
    if (text !== undefined) hash.update(text);
    else
      await withInput(path, io, async (input) => {
        if (input instanceof Uint8Array) hash.update(input);
        else for await (const chunk of input) hash.update(chunk);
      });
    found.push({ name, kind, digest: `sha256:${hash.digest("hex")}` });
  }
  return found;
}
