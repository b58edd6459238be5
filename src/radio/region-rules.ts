import { ratioToDb, toDbm } from "../units/index.js";
import { etsiAdaptivity, noneRead, usAdaptivity } from "./region-adaptivity.js";
import type {
  DensityLimit,
  DwellLimit,
  PowerRule,
  RegionCode,
  RegionRule,
  RuleFigure,
  RuleReading,
} from "./regulation.js";

const FCC = "47 CFR 15.247";
const RSS = "RSS-247, 4 W EIRP as wireless-regdb 2026-05-19 states it";
const ETSI = "EN 300 328 V2.2.2";
const ETSI_HOPS = "EN 300 328 V1.8.1 cl. 4.3.1.3.2";
const REGDB = "wireless-regdb 2026-05-19";

/** @returns a figure that a published rule gives; one that no rule was read for is assumed */
function rule(value: number, source: string, reading: RuleReading): RuleFigure {
  return { value, status: reading === "assumed" ? "assumed" : "standard", source, reading };
}

/** @returns a row without any limit but those given */
function row(modulation: PowerRule["modulation"], limits: Partial<PowerRule>): PowerRule {
  const none = { leastHopCount: null, maxEirpDbm: null, maxConductedDbm: null };
  return { modulation, ...none, freeAntennaGainDbi: null, density: null, dwells: [], ...limits };
}

function density(limitDbmPerMhz: RuleFigure, at: DensityLimit["at"], measuredOverMhz = 1): DensityLimit {
  return { limitDbmPerMhz, at, measuredOverMhz };
}

/** A mean of 0.4 s on a frequency, adaptive or not. */
function fourTenths(source: string, reading: RuleReading): readonly DwellLimit[] {
  return [{ appliesTo: "any", mostDwellS: rule(0.4, source, reading) }];
}

const fccAntenna = { freeAntennaGainDbi: rule(6, FCC, "read") };
const fccDwells = fourTenths(`${FCC}, 0.4 s mean within 0.4 s x frequencies used`, "read");

const fccRules: readonly PowerRule[] = [
  row("fixed", {
    ...fccAntenna,
    maxConductedDbm: rule(30, `${FCC}, digital modulation, 1 W`, "read"),
    density: density(rule(8 + ratioToDb(1 / 0.003), `${FCC}, 8 dBm in 3 kHz`, "read"), "conducted", 0.003),
  }),
  row("hopping", {
    ...fccAntenna,
    leastHopCount: rule(75, FCC, "read"),
    maxConductedDbm: rule(30, `${FCC}, 75 hop frequencies or more, 1 W`, "read"),
    dwells: fccDwells,
  }),
  row("hopping", {
    ...fccAntenna,
    leastHopCount: rule(15, FCC, "read"),
    maxConductedDbm: rule(toDbm(125), `${FCC}, 15 to 74 hop frequencies, 125 mW`, "read"),
    dwells: fccDwells,
  }),
];

/** 4 W, and 0.5 W for few hop frequencies, which were not read. */
function fourWattRules(
  eirp: RuleFigure,
  fewHopsSource: string,
  dwells: readonly DwellLimit[],
): readonly PowerRule[] {
  const recalled = (value: number): RuleFigure => rule(value, fewHopsSource, "from memory");
  return [
    row("fixed", { maxEirpDbm: eirp }),
    row("hopping", { maxEirpDbm: eirp, leastHopCount: recalled(75), dwells }),
    row("hopping", { maxEirpDbm: recalled(toDbm(500)), leastHopCount: recalled(15), dwells }),
  ];
}

const etsiDwells: readonly DwellLimit[] = [
  {
    appliesTo: "non-adaptive",
    mostDwellS: rule(0.015, `${ETSI_HOPS}.1, 15 ms within 15 ms x frequencies used`, "read"),
  },
  {
    appliesTo: "adaptive",
    mostDwellS: rule(
      0.4,
      "EN 300 328 cl. 4.3.1.4.3.2, 400 ms within 400 ms x frequencies used",
      "from memory",
    ),
  },
];

/** 100 mW EIRP; a fixed channel also 10 dBm in any MHz. */
function etsiRules(source: string, reading: RuleReading): readonly PowerRule[] {
  return [
    row("fixed", {
      maxEirpDbm: rule(20, `${source} cl. 4.3.2.2.3`, reading),
      density: density(rule(10, `${source} cl. 4.3.2.3.3, 10 dBm/MHz`, reading), "eirp"),
    }),
    row("hopping", {
      maxEirpDbm: rule(20, `${source}, hopping`, reading),
      leastHopCount: rule(15, ETSI_HOPS, "read"),
      dwells: etsiDwells,
    }),
  ];
}

const STD_T66 = "ARIB STD-T66";
const japanAntenna = { freeAntennaGainDbi: rule(2.14, STD_T66, "from memory") };
const japanRules: readonly PowerRule[] = [
  row("fixed", {
    ...japanAntenna,
    density: density(rule(10, `${STD_T66}, 10 mW/MHz`, "from memory"), "conducted"),
  }),
  row("hopping", {
    ...japanAntenna,
    leastHopCount: rule(15, "not read for JP; taken as elsewhere", "assumed"),
    density: density(
      rule(toDbm(3), `${STD_T66}, 3 mW/MHz, read strictly: while on one hop`, "from memory"),
      "conducted",
    ),
    dwells: fourTenths(STD_T66, "from memory"),
  }),
];

const zealandEirp = rule(36, `${REGDB}, NZ`, "read, second-hand");
const zealandRules: readonly PowerRule[] = [
  row("fixed", { maxEirpDbm: zealandEirp }),
  row("hopping", {
    maxEirpDbm: zealandEirp,
    leastHopCount: rule(15, "not read for NZ; taken as elsewhere", "assumed"),
  }),
];

const ISM: Pick<RegionRule, "lowMhz" | "highMhz"> = { lowMhz: 2400, highMhz: 2483.5 };
const DUTY = "From 10 dBm EIRP up, duty cycle, medium utilisation or adaptivity rules apply too.";

/**
 * The radio rules by region, as figures to plan with; each figure names its source and how it was read.
 * @source 47 CFR 15.247 (public copies), EN 300 328 V2.2.2 and V1.8.1, RSS-247 and the AU and NZ limits as
 *   wireless-regdb 2026-05-19 states them, ARIB STD-T66 from memory
 */
export const regionRules: Readonly<Record<RegionCode, RegionRule>> = {
  US: {
    region: "US",
    title: "United States",
    ...ISM,
    bandSource: `${FCC}; 2483.5-2500 MHz restricted, 47 CFR 15.205`,
    bandReading: "read",
    rules: fccRules,
    adaptivity: usAdaptivity,
    remark:
      "A fixed channel counts as digital modulation only if its 6 dB bandwidth is at least 500 kHz; if not, 47 CFR 15.249 leaves -1.25 dBm EIRP. Ask the maker.",
  },
  CA: {
    region: "CA",
    title: "Canada",
    ...ISM,
    bandSource: `${REGDB}, CA`,
    bandReading: "read, second-hand",
    rules: fourWattRules(
      rule(toDbm(4000), RSS, "read, second-hand"),
      "RSS-247, hop counts and 0.5 W",
      fourTenths("RSS-247, 0.4 s mean", "from memory"),
    ),
    adaptivity: noneRead("CA"),
    remark: "The conducted limits of RSS-247 (1 W, 125 mW for few hop frequencies) were not read.",
  },
  EU: {
    region: "EU",
    title: "European Union",
    ...ISM,
    bandSource: ETSI,
    bandReading: "read, second-hand",
    rules: etsiRules(ETSI, "read, second-hand"),
    adaptivity: etsiAdaptivity,
    remark: DUTY,
  },
  GB: {
    region: "GB",
    title: "Great Britain",
    ...ISM,
    bandSource: `${ETSI}; ${REGDB}, GB`,
    bandReading: "read, second-hand",
    rules: etsiRules(`${ETSI}, as designated in GB`, "from memory"),
    adaptivity: etsiAdaptivity,
    remark: DUTY,
  },
  AU: {
    region: "AU",
    title: "Australia",
    ...ISM,
    bandSource: `${REGDB}, AU`,
    bandReading: "read, second-hand",
    rules: fourWattRules(
      rule(toDbm(4000), `4 W EIRP, ${REGDB}, AU`, "read, second-hand"),
      "hop counts and 0.5 W of AU",
      [],
    ),
    adaptivity: noneRead("AU"),
    remark: "",
  },
  NZ: {
    region: "NZ",
    title: "New Zealand",
    ...ISM,
    bandSource: `${REGDB}, NZ`,
    bandReading: "read, second-hand",
    rules: zealandRules,
    adaptivity: noneRead("NZ"),
    remark: "",
  },
  JP: {
    region: "JP",
    title: "Japan",
    ...ISM,
    bandSource: STD_T66,
    bandReading: "from memory",
    rules: japanRules,
    adaptivity: noneRead("JP"),
    remark: "From memory throughout: have it checked before a radio is switched on.",
  },
  world: {
    region: "world",
    title: "anywhere else: the careful choice",
    lowMhz: 2402,
    highMhz: 2472,
    bandSource: `${REGDB}, world row without restrictions`,
    bandReading: "read",
    rules: etsiRules(`20 dBm: ${REGDB}, world row; density and hop count as ${ETSI}`, "assumed"),
    adaptivity: etsiAdaptivity,
    remark: "No country's rule: the narrowest band and the lowest power of the rules read.",
  },
};
