import { circuitSheet, hangSheet, installChecks, orderList, troubleCard } from "../install/index.js";
import type {
  Circuit,
  CircuitSheet,
  HangFigures,
  HangSheet,
  InstallCheck,
  InstallTerms,
  OrderList,
  TroubleEntry,
} from "../install/index.js";
import type { Issue } from "../issues/index.js";
import { circuitLoads } from "./circuit-loads.js";
import { readCrewColumns } from "./crew-luminaires.js";
import { hangPoints, roomTrims } from "./hang-points.js";
import { planPatch } from "./plan-patch.js";
import type { Venue } from "./venue.js";
import { venueCircuits } from "./venue-circuits.js";
import { venueInstallTerms } from "./venue-install-terms.js";
import type { ChosenChannels } from "./venue-install-terms.js";

/** How a venue's luminaires are to be hung and fed; what is left out is as the sheets assume it. */
export interface PlanHangOptions {
  /** For luminaires whose own columns say nothing, before what the venue file has for all. */
  readonly figures?: Partial<HangFigures>;
  /** Of circuits of which nothing else is known. */
  readonly circuit?: Partial<Circuit>;
  /** Of rooms that have none of their own. */
  readonly laserLineM?: number;
  readonly mayHangBelowTrim?: boolean;
  readonly levelsRows?: boolean;
  readonly eyeToleranceM?: number;
  readonly wasteRatio?: number;
  readonly chainSpoolM?: number;
  readonly cordSpoolM?: number;
  readonly safetySpoolM?: number;
  readonly spareRatio?: number;
  /** Null: the region's (1.25 in US and CA), else 1 and told. */
  readonly continuousFactorRatio?: number;
  readonly powerFactorRatio?: number;
  /** AWG in US, CA and for venues in feet, else mm². */
  readonly sizes?: "awg" | "mm2";
  readonly loadedCount?: 2 | 3;
  readonly mostDropRatio?: number;
  /** Do antennas come apart from the boxes? True unless told. */
  readonly antennasApart?: boolean;
  readonly channels?: readonly ChosenChannels[];
}

/** A venue's sheets for the crew; they certify nothing. */
export interface HangPlan {
  readonly hang: HangSheet;
  readonly circuits: CircuitSheet;
  readonly order: OrderList;
  readonly checks: readonly InstallCheck[];
  readonly trouble: readonly TroubleEntry[];
  /** What checks and trouble card are derived from. */
  readonly terms: InstallTerms;
  readonly sizes: "awg" | "mm2";
  /** Of the crew's own columns. */
  readonly issues: readonly Issue[];
}

/**
 * The crew's sheets of a venue: hang sheet, circuits and cords, order list, install order and checks, trouble card.
 * Figures come from the luminaires' own columns, then from the options, then from the venue file, then from the
 * sheets' own assumptions; ratings and weights are never assumed.
 * @throws {ArgumentError} when an option can't be one
 * @see {@link planPatch}
 */
export function planHang(venue: Venue, options: PlanHangOptions = {}): HangPlan {
  const { region, units, receivers, systems } = venue;
  const isNorthAmerican = region === "US" || region === "CA";
  const { sizes = isNorthAmerican || (region === null && units === "ft") ? "awg" : "mm2" } = options;
  const addresses = planPatch(venue).addresses.rows;
  const byName = new Map(venue.luminaires.map((luminaire) => [luminaire.name, luminaire]));
  const { figuresOf, issues } = readCrewColumns(venue);
  const hang = hangSheet({
    ...sheetOptions(options),
    points: hangPoints(
      addresses.map(({ name }) => byName.get(name)!),
      venue,
      figuresOf,
    ),
    rooms: roomTrims(venue, options.laserLineM ?? null),
    figures: { ...venue.hang, ...options.figures },
  });
  const known = venueCircuits(venue, figuresOf, options.circuit);
  const rowOf = new Map(hang.rows.map((row) => [row.name, row]));
  const circuits = circuitSheet({
    ...electricalOptions(options),
    ...{ circuits: known.circuits, region, sizes },
    luminaires: circuitLoads(venue, { circuits: known.circuits, figuresOf, rowOf }),
  });
  const luminaires = hang.rows.map(({ name }) => byName.get(name)!);
  const terms = venueInstallTerms(venue, {
    ...{ luminaires, addresses, hang, circuits, chosen: options.channels ?? [] },
  });
  const { spareRatio, antennasApart, cordSpoolM = null } = options;
  return {
    ...{ hang, circuits, terms, sizes, issues: [...issues, ...known.issues] },
    order: orderList({
      ...{ systems, receivers, hang, circuits, cordSpoolM },
      ...(spareRatio !== undefined && { spareRatio }),
      ...(antennasApart !== undefined && { antennasApart }),
    }),
    checks: installChecks(terms),
    trouble: troubleCard(terms),
  };
}

/** The hang sheet's own. */
function sheetOptions(options: PlanHangOptions): Partial<PlanHangOptions> {
  const { mayHangBelowTrim, levelsRows, eyeToleranceM, wasteRatio } = options;
  const { chainSpoolM, cordSpoolM, safetySpoolM } = options;
  const own = {
    mayHangBelowTrim,
    levelsRows,
    eyeToleranceM,
    wasteRatio,
    chainSpoolM,
    cordSpoolM,
    safetySpoolM,
  };
  return given(own);
}

/** The circuit sheet's own. */
function electricalOptions(options: PlanHangOptions): Partial<PlanHangOptions> {
  const { continuousFactorRatio, powerFactorRatio, loadedCount, mostDropRatio } = options;
  return given({ continuousFactorRatio, powerFactorRatio, loadedCount, mostDropRatio });
}

function given(options: Readonly<Record<string, unknown>>): Partial<PlanHangOptions> {
  return Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined));
}
