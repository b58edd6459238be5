import type { Radiated } from "../venue/index.js";
import { fixed, wholePercent } from "./number-format.js";

/** MHz, width, EIRP and airtime of what we radiate. */
export function radiatedWords({
  centresMhz,
  bandwidthMhz,
  eirpDbm,
  airtimeRatio,
  airtimeCapped,
}: Radiated): string {
  const [first, last] = [centresMhz[0]!, centresMhz[centresMhz.length - 1]!];
  const where =
    centresMhz.length === 1
      ? `at ${first} MHz`
      : `hopping over ${centresMhz.length} frequencies, ${first}–${last} MHz`;
  const capped = airtimeCapped ? " (the profile's figures add up to more: check them)" : "";
  return `${where}, ${bandwidthMhz} MHz wide, ${fixed(eirpDbm, 1)} dBm EIRP, on the air ${wholePercent(airtimeRatio)} of the time${capped}`;
}
