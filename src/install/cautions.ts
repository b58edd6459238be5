/** What a sheet asks people to do. */
export type CautionKind = "overhead" | "lift" | "drilling" | "mains" | "control" | "radio" | "emergency";

/** A caution of a sheet: one short line. */
export interface Caution {
  readonly kind: CautionKind | "sheet";
  readonly text: string;
}

const LINES: Readonly<Record<Caution["kind"], readonly string[]>> = {
  overhead: [
    "Rated hardware and a second, rated safety cable on an anchor of its own.",
    "Local code and the structure's own engineer decide what may hang where.",
    "A figure that was not given is not safe: what has no rating stays down.",
  ],
  lift: [
    "Never alone: one on the lift, one on the ground who can lower it.",
    "Stay within the lift's rated load, tools and luminaire counted.",
    "Is the floor rated for the lift? Area below closed, tools tethered.",
  ],
  drilling: ["Suspect old materials are tested before anyone drills or scrapes."],
  mains: [
    "Circuits are a licensed electrician's work, to local code.",
    "Dead, locked off and tested dead before a box is opened.",
  ],
  control: [
    "No luminaire here may be fed from a dimmer: at full it is still one.",
    "Luminaires with a receiver need power all the time they are to listen.",
  ],
  radio: ["EIRP by the region's rule; local rules and the radio's approval decide."],
  emergency: [
    "No emergency or exit lighting may depend on the radio link.",
    "It reaches its emergency level with the transmitter off, by local code",
    "and the authority having jurisdiction.",
  ],
  sheet: ["This sheet says what was computed and assumed. It certifies nothing."],
};

/** In the order in which they are printed. */
const KINDS: readonly CautionKind[] = [
  "overhead",
  "lift",
  "drilling",
  "mains",
  "control",
  "radio",
  "emergency",
];

/**
 * The cautions of a sheet, each kind once, in a fixed order; that it certifies nothing always stands last.
 * @param kinds what the sheet asks people to do
 * @example cautionsFor(["radio"]).map(({ kind }) => kind); // => ["radio", "sheet"]
 */
export function cautionsFor(kinds: readonly CautionKind[]): Caution[] {
  const asked = KINDS.filter((kind) => kinds.includes(kind));
  return [...asked, "sheet" as const].flatMap((kind) => LINES[kind].map((text) => ({ kind, text })));
}
