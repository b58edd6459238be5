/** What a blank of the survey form is filled with. */
export type FormAnswer =
  | { readonly kind: "text" | "length" | "weight" | "number" | "amperes" | "angle" | "time" }
  | { readonly kind: "choice"; readonly choices: readonly string[] };

/** A blank of the survey form. */
export interface FormField {
  /** The column that it is typed into: of luminaires.csv, of the venue file, or one of the crew's own beside them. */
  readonly column: string;
  /** Does the venue file know the column, or is it kept as typed? */
  readonly isFiled: boolean;
  readonly title: string;
  readonly answer: FormAnswer;
}

/** A table of the form: a line for each thing. */
export interface FormSection {
  readonly each: "ceiling point" | "room" | "emitter" | "access point" | "scan" | "venue";
  readonly fields: readonly FormField[];
}

const YES_NO = ["yes", "no", "unknown"];

function filed(column: string, title: string, answer: FormAnswer["kind"] | readonly string[]): FormField {
  return { column, isFiled: true, title, answer: answerOf(answer) };
}

function own(column: string, title: string, answer: FormAnswer["kind"] | readonly string[]): FormField {
  return { column, isFiled: false, title, answer: answerOf(answer) };
}

function answerOf(answer: FormAnswer["kind"] | readonly string[]): FormAnswer {
  if (typeof answer !== "string") return { kind: "choice", choices: answer };
  return answer === "choice" ? { kind: "choice", choices: [] } : { kind: answer };
}

const CEILING_POINT: readonly FormField[] = [
  filed("name", "Luminaire", "text"),
  filed("room", "Room", "text"),
  filed("x", "x on the plan", "length"),
  filed("y", "y on the plan", "length"),
  filed("ceiling_height", "Ceiling height from the floor", "length"),
  filed("trim_height", "Trim height, lowest point", "length"),
  filed("group", "Row or group", "text"),
  filed("watts", "Watts", "number"),
  filed("weight", "Weight", "weight"),
  filed("circuit", "Circuit", "text"),
  filed("emergency", "Emergency or exit lighting?", YES_NO),
  filed("on_link_loss", "When frames stop", ["hold", "dark", "preset", "full", "unknown"]),
  own("box_type", "Box type", "text"),
  own("hangs_from", "Hangs from", ["box", "structure"]),
  own("suspension", "Hung by", ["chain", "wire-rope", "stem"]),
  own("box_listed", "Box listed above 50 lb (23 kg)?", YES_NO),
  own("box_rated", "Rating of box or support", "weight"),
  own("hook_rated", "Rating of hook", "weight"),
  own("suspension_rated", "Rating of chain, rope or stem", "weight"),
  own("safety_rated", "Rating of safety cable and its anchor", "weight"),
  own("body_height", "Eye bolt to lowest point", "length"),
  own("slope", "Slope of the ceiling", "angle"),
  own("control", "Controlled by", [
    "none",
    "dimmer",
    "wall-switch",
    "sensor",
    "time-clock",
    "transfer-switch",
    "unknown",
  ]),
  own("supply", "Volts at the box", "number"),
  own("breaker", "Breaker's rating", "amperes"),
  own("feed", "Fed by", ["own-box", "through-fed", "unknown"]),
  own("shared_neutral", "Neutral shared with another circuit?", YES_NO),
  own("earth", "Earth present?", YES_NO),
  own("cord_condition", "Cord condition", "text"),
  own("canopy_condition", "Canopy condition", "text"),
];
const ROOM: readonly FormField[] = [
  filed("name", "Room", "text"),
  filed("height", "Floor to ceiling", "length"),
  filed("people", "People: empty, part, full", "text"),
  own("way_in", "Way in for the lift", "text"),
  own("floor_load", "Floor load for the lift", "weight"),
  own("fixed_seating", "Fixed seating?", YES_NO),
  own("suspect_materials", "Suspect old materials", "text"),
  own("console", "Console and DMX location", "text"),
  own("transmitter_power", "Clean power at the transmitter?", YES_NO),
  filed("trim_height", "Trim height of the room", "length"),
  filed("laser_line", "Laser line above the floor (datum)", "length"),
];
const EMITTER: readonly FormField[] = [
  filed("name", "2.4 GHz equipment", "text"),
  filed("type", "Kind", [
    "bluetooth",
    "ieee-802.15.4",
    "microwave-oven",
    "analogue-video",
    "wireless-dmx",
    "microphone",
    "intercom",
    "camera-control",
    "video-link",
    "hearing-assistance",
    "other",
  ]),
  filed("at", "Where: x, y", "text"),
  filed("height", "Height above the floor", "length"),
  own("owner", "Whose, and on when", "text"),
];
const ACCESS_POINT: readonly FormField[] = [
  filed("source", "Access point: name or address", "text"),
  filed("owner", "Whose", ["building", "neighbour", "unknown"]),
  filed("at", "Where: x, y", "text"),
  filed("height", "Height above the floor", "length"),
];
const SCAN: readonly FormField[] = [
  filed("file", "Scan file", "text"),
  filed("place", "Place", "text"),
  filed("room", "Room", "text"),
  filed("crowd", "Crowd", ["empty", "part", "full"]),
  filed("time", "Time", "time"),
  filed("height", "Height of the antenna", "length"),
];
const VENUE: readonly FormField[] = [
  filed("name", "Venue", "text"),
  filed("date", "Date of the event", "time"),
  filed("all_equipment_listed", "All 2.4 GHz equipment listed above?", ["true", "false"]),
  filed("event_minutes", "Event, minutes", "number"),
  own("event_times", "Event times", "text"),
  own("network_contact", "Network contact", "text"),
  own("electrician", "Electrician", "text"),
];

/** How the band is scanned on the survey visit, in order. */
export const SCAN_DRILL: readonly string[] = [
  "Own hotspot, Wi-Fi and Bluetooth off, on every phone of the crew.",
  "At each spot five looks, minutes apart; note place, crowd and time of each.",
  "One of the five at trim height, on the lift or a pole; note the height.",
  "First with the room empty, then again in a full house.",
  "List all other 2.4 GHz equipment: a list of networks does not show it.",
];

/**
 * The blank survey form as data: its columns are those of the venue file and of luminaires.csv, so that it can be
 * typed in line by line; columns that those don't know are kept there as typed.
 * @example surveyForm()[0].fields[4].column; // => "ceiling_height"
 */
export function surveyForm(): FormSection[] {
  return [
    { each: "ceiling point", fields: CEILING_POINT },
    { each: "room", fields: ROOM },
    { each: "emitter", fields: EMITTER },
    { each: "access point", fields: ACCESS_POINT },
    { each: "scan", fields: SCAN },
    { each: "venue", fields: VENUE },
  ];
}
