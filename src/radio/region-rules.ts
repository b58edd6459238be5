import { ratioToDb, toDbm } from "../units/index.js";
import type { Figure } from "./profile.js";
import type { DensityLimit, PowerRule, RegionCode, RegionRule } from "./regulation.js";

const FCC = "47 CFR 15.247";
const RSS = "RSS-247, 4 W EIRP read in wireless-regdb 2026-05-19";
const ETSI = "EN 300 328 V2.2.2";
const REGDB = "wireless-regdb 2026-05-19";

/** @returns a figure that a published rule gives */
function rule(value: number, source: string): Figure {
  return { value, status: "standard", source };
}

/** @returns a row without any limit yet */
function row(modulation: PowerRule["modulation"], limits: Partial<PowerRule>): PowerRule {
  const none = { leastHopCount: null, maxEirpDbm: null, maxConductedDbm: null };
  return { modulation, ...none, freeAntennaGainDbi: null, density: null, ...limits };
}

function density(limitDbmPerMhz: Figure, at: DensityLimit["at"], measuredOverMhz = 1): DensityLimit {
  return { limitDbmPerMhz, at, measuredOverMhz };
}

const fccAntenna = { freeAntennaGainDbi: rule(6, FCC) };

const fccRules: readonly PowerRule[] = [
  row("fixed", {
    ...fccAntenna,
    maxConductedDbm: rule(30, `${FCC}, digital modulation, 1 W`),
    density: density(rule(8 + ratioToDb(1 / 0.003), `${FCC}, 8 dBm in 3 kHz`), "conducted", 0.003),
  }),
  row("hopping", {
    ...fccAntenna,
    leastHopCount: rule(75, FCC),
    maxConductedDbm: rule(30, `${FCC}, 75 hop frequencies or more, 1 W`),
  }),
  row("hopping", {
    ...fccAntenna,
    leastHopCount: rule(15, FCC),
    maxConductedDbm: rule(toDbm(125), `${FCC}, 15 to 74 hop frequencies, 125 mW`),
  }),
];

/** 4 W, and 0.5 W for few hop frequencies. */
function fourWattRules(source: string, fewHopsSource: string): readonly PowerRule[] {
  const eirp = rule(toDbm(4000), source);
  return [
    row("fixed", { maxEirpDbm: eirp }),
    row("hopping", { maxEirpDbm: eirp, leastHopCount: rule(75, fewHopsSource) }),
    row("hopping", {
      maxEirpDbm: rule(toDbm(500), fewHopsSource),
      leastHopCount: rule(15, fewHopsSource),
    }),
  ];
}

/** 100 mW EIRP; a fixed channel also 10 dBm in any MHz. */
function etsiRules(source: string): readonly PowerRule[] {
  return [
    row("fixed", {
      maxEirpDbm: rule(20, `${source} cl. 4.3.2.2.3`),
      density: density(rule(10, `${source} cl. 4.3.2.3.3, 10 dBm/MHz`), "eirp"),
    }),
    row("hopping", {
      maxEirpDbm: rule(20, `${source}, hopping`),
      leastHopCount: rule(15, "EN 300 328 V1.8.1 cl. 4.3.1.3.2"),
    }),
  ];
}

const STD_T66 = "ARIB STD-T66, from memory";
const japanRules: readonly PowerRule[] = [
  row("fixed", {
    freeAntennaGainDbi: rule(2.14, STD_T66),
    density: density(rule(10, `${STD_T66}, 10 mW/MHz`), "conducted"),
  }),
  row("hopping", {
    freeAntennaGainDbi: rule(2.14, STD_T66),
    leastHopCount: rule(15, "not read for JP; taken as elsewhere"),
    density: density(rule(toDbm(3), `${STD_T66}, 3 mW/MHz, read strictly: while on one hop`), "conducted"),
  }),
];

const ISM: Pick<RegionRule, "lowMhz" | "highMhz"> = { lowMhz: 2400, highMhz: 2483.5 };
const DUTY = "From 10 dBm EIRP up, duty cycle, medium utilisation or adaptivity rules apply too.";

/**
 * The radio rules by region, as figures to plan with.
 * @source 47 CFR 15.247 (public copies), EN 300 328 V2.2.2 and V1.8.1, RSS-247 and the AU and NZ limits as
 *   wireless-regdb 2026-05-19 states them, ARIB STD-T66 from memory; each figure names its own
 */
export const regionRules: Readonly<Record<RegionCode, RegionRule>> = {
  US: {
    region: "US",
    title: "United States",
    ...ISM,
    bandSource: `${FCC}; 2483.5-2500 MHz restricted, 47 CFR 15.205`,
    rules: fccRules,
    remark:
      "A fixed channel counts as digital modulation only if its 6 dB bandwidth is at least 500 kHz; if not, 47 CFR 15.249 leaves -1.25 dBm EIRP. Ask the maker.",
  },
  CA: {
    region: "CA",
    title: "Canada",
    ...ISM,
    bandSource: `${REGDB}, CA`,
    rules: fourWattRules(RSS, "RSS-247, hop counts and 0.5 W from memory"),
    remark: "The conducted limits of RSS-247 (1 W, 125 mW for few hop frequencies) were not read.",
  },
  EU: {
    region: "EU",
    title: "European Union",
    ...ISM,
    bandSource: ETSI,
    rules: etsiRules(ETSI),
    remark: DUTY,
  },
  GB: {
    region: "GB",
    title: "Great Britain",
    ...ISM,
    bandSource: `${ETSI}; ${REGDB}, GB`,
    rules: etsiRules(`${ETSI}, as designated in GB (from memory)`),
    remark: DUTY,
  },
  AU: {
    region: "AU",
    title: "Australia",
    ...ISM,
    bandSource: `${REGDB}, AU`,
    rules: fourWattRules(`4 W EIRP, ${REGDB}, AU`, "hop counts and 0.5 W from memory"),
    remark: "",
  },
  NZ: {
    region: "NZ",
    title: "New Zealand",
    ...ISM,
    bandSource: `${REGDB}, NZ`,
    rules: [
      row("fixed", { maxEirpDbm: rule(36, `${REGDB}, NZ`) }),
      row("hopping", {
        maxEirpDbm: rule(36, `${REGDB}, NZ`),
        leastHopCount: rule(15, "not read for NZ; taken as elsewhere"),
      }),
    ],
    remark: "",
  },
  JP: {
    region: "JP",
    title: "Japan",
    ...ISM,
    bandSource: STD_T66,
    rules: japanRules,
    remark: "From memory throughout: have it checked before a radio is switched on.",
  },
  world: {
    region: "world",
    title: "anywhere else: the careful choice",
    lowMhz: 2402,
    highMhz: 2472,
    bandSource: `${REGDB}, world row without restrictions`,
    rules: etsiRules(`20 dBm: ${REGDB}, world row; density and hop count as ${ETSI}`),
    remark: "No country's rule: the narrowest band and the lowest power of the rules read.",
  },
};
