import type { Survey } from "../scan/index.js";
import { toDbm } from "../units/index.js";
import type { ChannelReport } from "./channel-report.js";
import type { RadioProfile } from "../radio/index.js";
import { dB, exactPercent, fixed } from "./number-format.js";
import type { LengthUnit } from "./pen.js";
import { isFigure } from "./profile-text.js";
import { antennaLine, fadingLine, referenceLine } from "./site-lines.js";

/**
 * What was assumed to get the figures, one statement a line; the first ones matter most.
 * @param scanned false: no scan was read, so nothing is said of sources
 */
export function assumptionLines(report: ChannelReport, unit: LengthUnit, scanned = true): string[] {
  const { plan, survey, regionWords, issues } = report;
  const { setting } = plan;
  const { profile } = setting;
  return [
    radioLine(profile),
    `Power ${dBmText(profile.txPowerDbm.value)} + antenna ${gainText(profile.txGainDbi.value)} - feeder ${dB(profile.txFeederLossDb.value)}; ` +
      `receiver antenna ${gainText(profile.rxGainDbi.value)} in ${profile.enclosure.value} (-${dB(profile.enclosureLossDb.value)}); ` +
      `needs C/I ${dB(profile.requiredCiDb.value)}, sensitivity ${dBmText(profile.sensitivityDbm.value)}, noise ${dBmText(noiseDbm(report))}.`,
    ...issues.filter(({ action }) => action === "stated").map((issue) => sentence(issue.expected)),
    referenceLine(report, unit),
    antennaLine(report),
    fadingLine(report, unit),
    ...(plan.job === null ? [] : [RECEIVERS_APART]),
    ...(scanned ? [interferenceLine(report), airtimeLine(survey)] : []),
    `Frame loss: packet ${profile.packetMs.value} ms, ${profile.frameRateHz.value} frames a second, ${profile.transmissionsPerFrameCount.value} sent a frame; Wi-Fi bursts ${setting.burstMs} ms (assumed). A lost frame shows only while the look is changing.`,
    `${profile.universesPerTransmitterCount.value === 1 ? "One universe" : `${profile.universesPerTransmitterCount.value} universes`} a transmitter; a second transmitter is a second system on its own channel.`,
    regionWords === null
      ? "Band edges 2400–2483.5 MHz; transmit power was not judged (--region)."
      : "Power and band edges: see Regulation.",
    "Radio channel numbers are the profile's own; Wi-Fi rules for 12 and 13 do not apply to them.",
  ];
}

const RECEIVERS_APART =
  "All receivers together: each fades for itself; a wall or a crowd that shadows several at once makes fewer jobs with holes, but more holes in them.";

/** Which radio, and which of its figures are the user's. */
export function radioLine(profile: RadioProfile): string {
  const own = Object.entries(profile)
    .filter(([, figure]) => isFigure(figure) && figure.status === "yours")
    .map(([key]) => key);
  if (!profile.generic) return `Radio: profile ${profile.name}, your figures.`;
  const but = own.length === 0 ? "" : ` but for ${own.join(", ")}`;
  return `Radio: profile ${profile.name}, generic figures${but}; enter your radio's own (--profile FILE, --set).`;
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${words.endsWith(".") ? "" : "."}`;
}

function interferenceLine({ plan }: ChannelReport): string {
  const share = exactPercent(plan.setting.busyShareRatio);
  return `Interference: the level exceeded ${share} of the time; each source at its loudest place; worst legal skirts of the Wi-Fi masks; scanning antenna 0 dBi.`;
}

function airtimeLine({ emitters, emitterCount }: Survey): string {
  const assumedCount = emitters.filter(({ airtimeAssumed }) => airtimeAssumed).length;
  return `Airtime assumed for ${assumedCount} of ${emitterCount} sources, reported by the rest. "on" is a source's share of its group's turns: sources of one Wi-Fi channel take turns; those that cannot hear each other may overlap in truth.`;
}

/** A peak gain that a pattern gives has more places than anyone reads. */
function gainText(gainDbi: number): string {
  return `${Number(gainDbi.toFixed(2))} dBi`;
}

function dBmText(levelDbm: number): string {
  return `${fixed(levelDbm, Number.isInteger(levelDbm) ? 0 : 1)} dBm`;
}

function noiseDbm({ plan }: ChannelReport): number {
  return plan.ranking[0]?.distribution.restDbm ?? toDbm(0);
}

/** What the reader must hear before anyone climbs or transmits. */
export const RADIO_CAUTIONS: readonly string[] = [
  "Computed from the scans and figures named; it certifies nothing. EIRP by the region's rule: local rules decide.",
  "No emergency or exit lighting may depend on the radio link. Overhead and mains work: local code, licensed practice.",
];
