import type { JsonSchema } from "./field.js";
import { venueField } from "./venue-field.js";

/**
 * The JSON Schema (draft 2020-12) of a venue file, from the table that {@link readVenue} reads by: keys, words,
 * units and believable values. What one part says of another (names, heights, crossings) only the reader judges.
 * @example venueSchema.required; // => ["name", "units", "rooms", "systems"]
 */
export const venueSchema: JsonSchema = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  $id: "https://stillband.invalid/venue.schema.json",
  title: "stillband venue",
  ...venueField.schema,
};
