const M_PER_FT = 0.3048; // exact: international foot of 1959

/**
 * @param lengthFt feet. @returns metres, exact definition 0.3048 m/ft
 * @example feetToM(10); // => 3.048
 */
export function feetToM(lengthFt: number): number {
  return lengthFt * M_PER_FT;
}

/**
 * @param lengthM metres. @returns feet
 * @example mToFeet(3.048); // => 10
 */
export function mToFeet(lengthM: number): number {
  return lengthM / M_PER_FT;
}
