import type { Field } from "./field.js";

/** What a question of yes or no is answered with, or that nobody knows. */
export type YesNo = "yes" | "no" | "unknown";

const ANSWERS: readonly (string | boolean)[] = ["yes", "no", "unknown", true, false];

/** An answer to a question; YAML writes yes and no, JSON true and false. @param name that the messages have for it */
export function yesNo(description: string, name: string): Field<YesNo> {
  return {
    schema: { description, enum: ANSWERS },
    read: (raw, spot) => {
      if (raw === true) return "yes";
      if (raw === false) return "no";
      if (raw === "yes" || raw === "no" || raw === "unknown") return raw;
      return spot.error(raw, `${name}: yes, no or unknown`);
    },
  };
}
