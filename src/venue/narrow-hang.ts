import { orderList, spoolOrder, suspensionTotals, troubleCard } from "../install/index.js";
import type { CheckCode, EmergencyNotice, HangSheet, InstallCheck, InstallTerms } from "../install/index.js";
import type { HangPlan, PlanHangOptions } from "./plan-hang.js";
import type { Venue } from "./venue.js";

/** What is looked at of a venue's sheets; all of it where neither is given. */
export interface HangPart {
  readonly room?: string | undefined;
  readonly system?: string | undefined;
}

/**
 * The sheets of one room or one system. Lengths, levels and loads are those of the whole venue: a circuit that also
 * feeds other rooms is shown with all of its load. Totals and order are the part's.
 * @see {@link planPatch}
 */
export function narrowHang(
  plan: HangPlan,
  venue: Venue,
  { room, system }: HangPart,
  options: PlanHangOptions = {},
): HangPlan {
  if (room === undefined && system === undefined) return plan;
  const names = new Set(
    venue.luminaires
      .filter(
        (one) => (room === undefined || one.room === room) && (system === undefined || one.system === system),
      )
      .map(({ name }) => name),
  );
  const hang = narrowSheet(plan.hang, names, options);
  const { rows, withoutCircuit, emergency } = plan.circuits;
  const circuits = {
    ...plan.circuits,
    rows: rows.filter(({ luminaires }) => luminaires.some((name) => names.has(name))),
    withoutCircuit: withoutCircuit.filter((name) => names.has(name)),
    emergency: narrowNotice(emergency, names),
  };
  const terms = narrowTerms(plan.terms, names);
  const { antennasApart, cordSpoolM = null } = options;
  return {
    ...{ ...plan, hang, circuits, terms, trouble: troubleCard(terms) },
    order: orderList({
      ...{ systems: terms.systems, receivers: terms.receivers, hang, circuits, cordSpoolM },
      spareRatio: plan.order.spareRatio,
      ...(antennasApart !== undefined && { antennasApart }),
    }),
    checks: plan.checks.filter((check) => isOf(check, terms)),
  };
}

function narrowSheet(hang: HangSheet, names: ReadonlySet<string>, options: PlanHangOptions): HangSheet {
  const rows = hang.rows.filter(({ name }) => names.has(name));
  const rooms = new Set(rows.map(({ room }) => room));
  const { wasteRatio } = hang;
  return {
    ...hang,
    rows,
    levels: hang.levels.filter((level) => level.names.some((name) => names.has(name))),
    suspensions: suspensionTotals(rows, wasteRatio, options.chainSpoolM ?? null),
    cord: spoolOrder(
      rows.flatMap(({ cord }) => cord?.lengthM ?? []),
      wasteRatio,
      options.cordSpoolM ?? null,
    ),
    safety: spoolOrder(
      rows.flatMap(({ safetyM }) => safetyM ?? []),
      wasteRatio,
      options.safetySpoolM ?? null,
    ),
    datums: hang.datums.filter((datum) => rooms.has(datum.room)),
    doNotHang: hang.doNotHang.filter((name) => names.has(name)),
    emergency: narrowNotice(hang.emergency, names),
  };
}

function narrowNotice(notice: EmergencyNotice, names: ReadonlySet<string>): EmergencyNotice {
  return {
    names: notice.names.filter((name) => names.has(name)),
    unknownNames: notice.unknownNames.filter((name) => names.has(name)),
  };
}

function narrowTerms(terms: InstallTerms, names: ReadonlySet<string>): InstallTerms {
  const ofShown = ({ luminaires }: { readonly luminaires: readonly string[] }): boolean =>
    luminaires.some((name) => names.has(name));
  const receivers = terms.receivers.filter(ofShown);
  return {
    systems: terms.systems.filter(({ name }) => receivers.some(({ system }) => system === name)),
    receivers,
    luminaires: terms.luminaires.filter(({ name }) => names.has(name)),
    circuits: terms.circuits.filter(ofShown),
    doNotHang: terms.doNotHang.filter((name) => names.has(name)),
  };
}

/** Whom a check is about. */
const SUBJECT_OF: Readonly<Record<CheckCode, "circuits" | "luminaires" | "systems" | "receivers" | "venue">> =
  {
    "dead-and-locked": "circuits",
    "control-out": "circuits",
    "emergency-settled": "luminaires",
    "rating-settled": "luminaires",
    "channel-set": "systems",
    "address-set": "luminaires",
    "loss-behaviour-set": "luminaires",
    "label-written": "luminaires",
    "linked-on-ground": "receivers",
    "listening-before-raise": "receivers",
    "power-made-up": "luminaires",
    terminated: "receivers",
    "link-at-trim": "receivers",
    "no-rdm": "venue",
    "power-cut": "systems",
    "transmitter-off": "systems",
    "handover-scan": "venue",
    "full-house-scan": "venue",
  };

function isOf({ code, subject }: InstallCheck, terms: InstallTerms): boolean {
  const kind = SUBJECT_OF[code];
  if (kind === "venue" || subject === null) return true;
  if (kind === "circuits") return terms.circuits.some(({ circuit }) => circuit === subject);
  return terms[kind].some(({ name }) => name === subject);
}
