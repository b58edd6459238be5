import { FARTHEST_M, length } from "./field-length.js";
import { mapping } from "./field-mapping.js";
import { figure, foreignText, text, whole, word } from "./field-values.js";
import { refined } from "./field.js";
import type { Field } from "./field.js";
import type { Luminaire } from "../venue-luminaire.js";
import { isMapping } from "./file-spot.js";
import { yesNo } from "./yes-no-field.js";

const emergency = yesNo("does it count as emergency or exit lighting?", "emergency");

const further: Field<Readonly<Record<string, string>>> = {
  schema: {
    description: "the crew's own columns",
    type: "object",
    additionalProperties: { type: ["string", "number"] },
  },
  read: (raw, spot) => {
    if (!isMapping(raw)) return spot.error(raw, "a mapping of texts");
    const cells = Object.entries(raw).filter(([, cell]) => cell !== null);
    const read = cells.map(([key, cell]) => [key, ownCell.read(cell, spot.key(key))] as const);
    return read.some(([, cell]) => cell === undefined)
      ? undefined
      : (Object.fromEntries(read) as Record<string, string>);
  },
};
/** What the crew typed in a column of their own: nothing is made of it. */
const ownCell = foreignText("a text", 2000);

/** The keys of a luminaire: of its mapping in a venue file, and of its row in a table. */
export const luminaireKeys = {
  needed: {
    name: text("name or number of the luminaire"),
    room: text("the room that it hangs in"),
    x: length("x on the plan", [-FARTHEST_M, FARTHEST_M]),
    y: length("y on the plan", [-FARTHEST_M, FARTHEST_M]),
  },
  further: {
    ceiling_height: length("height of its ceiling point above the floor", [0, 200], true),
    trim_height: length("height of its lowest edge above the floor", [0, 200], true),
    system: text("its system; left out: the one that serves its room"),
    receiver: text("the receiver that serves it; left out: one of its own"),
    mode: text("its DMX mode"),
    footprint: whole("DMX slots that it takes", [1, 512]),
    universe: whole("its DMX universe, where that is settled", [1, 63_999]),
    address: whole("its DMX start address, where that is settled", [1, 512]),
    watts: figure("power that it draws, W", [0, 100_000]),
    weight_kg: figure("weight, kg", [0, 10_000]),
    weight_lb: figure("weight, lb", [0, 22_000]),
    circuit: text("the circuit that feeds it"),
    group: text("its group"),
    emergency,
    on_link_loss: word("what it does when frames stop", ["hold", "dark", "preset", "full", "unknown"]),
    further,
  },
};

/** kg of a pound, exact: international avoirdupois pound of 1959. */
export const KG_PER_LB = 0.453_592_37;

/** A lighting fixture on its hanging point. */
export const luminaireField: Field<Luminaire> = refined(
  mapping("a luminaire", luminaireKeys.needed, luminaireKeys.further),
  (part, spot) => {
    if (part.weight_kg !== null && part.weight_lb !== null)
      return spot.key("weight_lb").error(part.weight_lb, "one weight, in kg or in lb", "contradiction");
    return {
      name: part.name,
      room: part.room,
      x: part.x,
      y: part.y,
      ceilingHeightM: part.ceiling_height,
      trimHeightM: part.trim_height,
      system: part.system,
      receiver: part.receiver,
      mode: part.mode,
      footprintSlotCount: part.footprint,
      universe: part.universe,
      address: part.address,
      watts: part.watts,
      weightKg: part.weight_lb === null ? part.weight_kg : part.weight_lb * KG_PER_LB,
      circuit: part.circuit,
      group: part.group,
      emergency: part.emergency ?? "unknown",
      onLinkLoss: part.on_link_loss ?? "unknown",
      further: part.further ?? {},
    };
  },
);
