import { feetToM } from "../units/index.js";
import { awgAreaMm2 } from "./wire-gauge.js";

/** Where a figure comes from, and whether it was read there or recalled. */
export interface WireOrigin {
  readonly source: string;
  readonly status: "read, second-hand" | "memory";
}

/** A copper conductor of a flexible cord. */
export interface CordConductor {
  /** As it is ordered: "14 AWG", "2.5 mm²". */
  readonly name: string;
  /** Null: a size in mm². */
  readonly awg: number | null;
  readonly areaMm2: number;
  /** Of one conductor at 75 °C. */
  readonly resistanceOhmPerM: number;
  readonly resistanceOrigin: WireOrigin;
  /** Cord current with two loaded conductors (and earth); null: not in the table. */
  readonly twoLoadedA: number | null;
  readonly twoLoadedOrigin: WireOrigin;
  /** Cord current with three loaded conductors. */
  readonly threeLoadedA: number;
  readonly threeLoadedOrigin: WireOrigin;
}

const NEC_RESISTANCE: WireOrigin = {
  source: "NEC Chapter 9 Table 8, stranded uncoated copper, 75 °C",
  status: "read, second-hand",
};
const NEC_TWO: WireOrigin = {
  source: "NEC Table 400.5(A)(1) column B, two current-carrying conductors",
  status: "read, second-hand",
};
const NEC_THREE: WireOrigin = {
  source: "NEC Table 400.5(A)(1) column A, three current-carrying conductors",
  status: "memory",
};
const IEC_RESISTANCE: WireOrigin = {
  source: "IEC 60228 class 5, plain copper at 20 °C, brought to 75 °C by 0.00393 per K",
  status: "memory",
};
const FLEXIBLE_CORD: WireOrigin = { source: "BS 7671 Table 4F3A, flexible cords", status: "memory" };

/** Thinnest first. */
export const AWG_CORDS: readonly CordConductor[] = [
  awgCord(18, 7.95, 10, 7),
  awgCord(16, 4.99, 13, 10),
  awgCord(14, 3.14, 18, 15),
  awgCord(12, 1.98, 25, 20),
  awgCord(10, 1.24, null, 25),
];

/** Thinnest first. */
export const MM2_CORDS: readonly CordConductor[] = [
  mm2Cord(0.75, 26, 6, 6),
  mm2Cord(1, 19.5, 10, 10),
  mm2Cord(1.5, 13.3, 16, 16),
  mm2Cord(2.5, 7.98, 25, 20),
  mm2Cord(4, 4.95, 32, 25),
];

/** @param ohmPerThousandFeet Table 8's own unit */
function awgCord(
  awg: number,
  ohmPerThousandFeet: number,
  twoLoadedA: number | null,
  threeLoadedA: number,
): CordConductor {
  return {
    ...{ name: `${awg} AWG`, awg, areaMm2: awgAreaMm2(awg) },
    resistanceOhmPerM: ohmPerThousandFeet / feetToM(1000),
    resistanceOrigin: NEC_RESISTANCE,
    ...{ twoLoadedA, twoLoadedOrigin: NEC_TWO, threeLoadedA, threeLoadedOrigin: NEC_THREE },
  };
}

/** @param ohmPerKm the standard's own unit, at 20 °C */
function mm2Cord(areaMm2: number, ohmPerKm: number, twoLoadedA: number, threeLoadedA: number): CordConductor {
  return {
    ...{ name: `${areaMm2} mm²`, awg: null, areaMm2 },
    resistanceOhmPerM: (ohmPerKm / 1000) * (1 + 0.00393 * 55),
    resistanceOrigin: IEC_RESISTANCE,
    ...{ twoLoadedA, twoLoadedOrigin: FLEXIBLE_CORD, threeLoadedA, threeLoadedOrigin: FLEXIBLE_CORD },
  };
}
