import { gainTowards } from "../../propagation/index.js";
import type { Antenna } from "../../propagation/index.js";
import { ArgumentError } from "../../issues/index.js";
import type { Field } from "./field.js";
import { refined } from "./field.js";
import { mapping } from "./field-mapping.js";
import type { MappingValue } from "./field-mapping.js";
import { figure, word } from "./field-values.js";
import type { FileSpot } from "./file-spot.js";
import { heldToKind, kindSchema } from "./kind-keys.js";

const KINDS = {
  isotropic: { needed: [], further: [] },
  dipole: { needed: [], further: [] },
  collinear: { needed: ["gain_dbi"], further: [] },
  panel: {
    needed: ["gain_dbi", "azimuth_beamwidth_deg", "elevation_beamwidth_deg"],
    further: ["front_to_back_db", "polarisation"],
  },
} as const;
const MOUNT = ["mounting", "azimuth_deg", "tilt_deg"];

const needed = {
  kind: word("kind of antenna", ["isotropic", "dipole", "collinear", "panel"]),
};
const further = {
  gain_dbi: figure("peak gain, dBi (collinear, panel)", [-10, 30]),
  azimuth_beamwidth_deg: figure("half-power width across a panel, degrees", [1, 179]),
  elevation_beamwidth_deg: figure("half-power width along a panel's vertical, degrees", [1, 179]),
  front_to_back_db: figure("a panel's peak over its back lobes, dB", [6, 60]),
  polarisation: word("of a panel", ["linear", "circular"]),
  mounting: word("how it is fixed", ["upright", "sideways", "hanging"]),
  azimuth_deg: figure("where it faces or leans on the plan, degrees from +x towards +y", [-360, 360]),
  tilt_deg: figure("downwards, degrees", [-90, 90]),
};
type Part = MappingValue<typeof needed, typeof further>;

/** An antenna and how it is fixed. */
export const antennaField: Field<Antenna> = refined(
  mapping("an antenna; left out: the profile's gain in every direction", needed, further, kindSchema(KINDS)),
  antennaOf,
);

function antennaOf(part: Part, spot: FileSpot): Antenna | undefined {
  if (!heldToKind(part, part.kind, KINDS, spot, MOUNT)) return undefined;
  const antenna = plainAntenna(part);
  try {
    gainTowards(antenna)({ x: 1, y: 0.1, z: 0.1 });
    return antenna;
  } catch (error) {
    if (!(error instanceof ArgumentError)) throw error;
    const argument = error.argument.split(".").at(-1) ?? "";
    const key = argument.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
    return spot.key(key).error(error.received, error.expected);
  }
}

function plainAntenna(part: Part): Antenna {
  const mount = {
    ...(part.mounting !== null && { mounting: part.mounting }),
    ...(part.azimuth_deg !== null && { azimuthDeg: part.azimuth_deg }),
    ...(part.tilt_deg !== null && { tiltDeg: part.tilt_deg }),
  };
  const { kind, gain_dbi: gainDbi } = part;
  if (kind === "isotropic" || kind === "dipole") return { kind, ...mount };
  if (kind === "collinear") return { kind, gainDbi: gainDbi!, ...mount };
  return {
    kind,
    gainDbi: gainDbi!,
    azimuthBeamwidthDeg: part.azimuth_beamwidth_deg!,
    elevationBeamwidthDeg: part.elevation_beamwidth_deg!,
    ...(part.front_to_back_db !== null && { frontToBackDb: part.front_to_back_db }),
    ...(part.polarisation !== null && { polarisation: part.polarisation }),
    ...mount,
  };
}
