/**
 * The band's columns, in characters and in SVG, 1.25 MHz each: four to a 5 MHz raster step, a column's middle on each
 * raster frequency, 80 in a terminal with the scale.
 */
export const BAND_GRID = { startMhz: 2400.125, stepMhz: 1.25, stepCount: 67 } as const;
