const TICK_MHZ = 20;

/** Frequencies that a picture of the band names under its axis: whole 20 MHz, ends included. */
export function frequencyTicksMhz(startMhz: number, endMhz: number): number[] {
  const ticks: number[] = [];
  for (let mhz = Math.ceil(startMhz / TICK_MHZ) * TICK_MHZ; mhz <= endMhz; mhz += TICK_MHZ) ticks.push(mhz);
  return ticks;
}
