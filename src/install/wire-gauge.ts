import { requireFinite, requirePositive } from "../issues/index.js";

/**
 * Diameter of a solid round wire: d = 0.127 mm · 92^((36 − n)/39).
 * @param awg gauge number; 0, −1, −2 and −3 are 1/0, 2/0, 3/0 and 4/0
 * @returns mm
 * @throws {ArgumentError} when it is not finite
 * @source ASTM B258, read second-hand: No. 36 is 0.005 in, No. 4/0 is 0.46 in, 39 equal steps between
 * @example Number(awgDiameterMm(36).toFixed(6)); // => 0.127
 */
export function awgDiameterMm(awg: number): number {
  requireFinite("awg", awg);
  return 0.127 * 92 ** ((36 - awg) / 39);
}

/**
 * Cross-section of a solid round wire, πd²/4.
 * @param awg gauge number; 0, −1 … for 1/0, 2/0 …
 * @returns mm²
 * @throws {ArgumentError} when the gauge number is not finite
 * @example Number(awgAreaMm2(14).toFixed(4)); // => 2.0809
 */
export function awgAreaMm2(awg: number): number {
  return (Math.PI / 4) * awgDiameterMm(awg) ** 2;
}

/**
 * Direct-current resistance of annealed copper: R = (1 + 0.00393·(T − 20)) / (58·A).
 * @param areaMm2 cross-section of the metal, > 0
 * @param temperatureC of the conductor
 * @returns Ω a metre of one conductor
 * @throws {ArgumentError} when the area is not > 0 or the temperature not finite
 * @source IEC 60028, read second-hand: 1/58 Ω·mm²/m at 20 °C, 0.00393 per K
 * @validity about −50 to 150 °C; strands are a few per cent longer than the cord
 * @example Number((1000 * copperResistanceOhmPerM(1, 20)).toFixed(3)); // => 17.241
 */
export function copperResistanceOhmPerM(areaMm2: number, temperatureC: number): number {
  requirePositive("areaMm2", areaMm2);
  requireFinite("temperatureC", temperatureC);
  return (1 + 0.00393 * (temperatureC - 20)) / (58 * areaMm2);
}
