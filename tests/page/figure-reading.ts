/** What a figure's text says, read by independent arithmetic, and how far a rounded number may be off. */
export interface ReadFigure {
  /** In the plan file's unit. */
  readonly value: number;
  /** Half the last place shown, in that unit. */
  readonly halfStep: number;
  /** The text says only that it is less. */
  readonly isBound: boolean;
}

// Exact by the international yard and pound agreement of 1959.
const FOOT_M = 0.3048;
const POUND_KG = 0.45359237;

/** @param from the JSON pointer, whose last step names the unit of the plan file */
export function readFigure(text: string, from: string): ReadFigure {
  const plain = text.replace("−", "-");
  const inches = /^(-?)(\d+)' (\d+)(?: (\d+)\/(\d+))?"$/.exec(plain);
  if (inches !== null) {
    const [, sign, feet, whole, part = "0", of = "1"] = inches;
    const value = (Number(feet) + (Number(whole) + Number(part) / Number(of)) / 12) * FOOT_M;
    return { value: sign === "-" ? -value : value, halfStep: FOOT_M / 12 / 16, isBound: false };
  }
  const found = /^(<|under |over )?(-?\d+(?:\.(\d+))?(?:e-?\d+)?)(?: ?([^\d].*))?$/.exec(plain);
  if (found === null) throw new Error(`no figure: ${text}`);
  const [, bound, number, places = "", unit = ""] = found;
  const scale = scaleOf(unit.trim(), from);
  return {
    value: Number(number) * scale,
    halfStep: (10 ** -places.length / 2) * scale,
    isBound: bound !== undefined,
  };
}

function scaleOf(unit: string, from: string): number {
  if (unit === "%") return 0.01;
  if (unit === "ft") return FOOT_M;
  if (unit === "lb") return POUND_KG;
  if (unit === "ms" && from.endsWith("Us")) return 1000;
  return 1;
}

/** Figures that are rounded one way on purpose: a reach and a share never up, an order never down. */
export function isOneSided(from: string): boolean {
  return /(?:reachM|clearAirRatio|heldRatio|lossRatio|rateHz|order\/(?:orderM|lengthM|spoolM))$/.test(from);
}
