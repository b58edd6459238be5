/** Luminaires that the law may want lit when the radio is silent. */
export interface EmergencyNotice {
  /** They count as emergency or exit lighting. */
  readonly names: readonly string[];
  /** Nobody has said whether they do: printed on every sheet. */
  readonly unknownNames: readonly string[];
}

/**
 * Which luminaires count as emergency or exit lighting, and of which nobody knows.
 * @example emergencyNotice([{ name: "F1", emergency: "no" }, { name: "F2" }]).unknownNames; // => ["F2"]
 */
export function emergencyNotice(
  luminaires: readonly { readonly name: string; readonly emergency?: "yes" | "no" | "unknown" }[],
): EmergencyNotice {
  const named = (answer: string): string[] =>
    luminaires.filter(({ emergency = "unknown" }) => emergency === answer).map(({ name }) => name);
  return { names: named("yes"), unknownNames: named("unknown") };
}
