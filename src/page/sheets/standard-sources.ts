import { bareSource, PRACTICE_TITLE, sourceWords } from "../../report/index.js";
import type { PlanReport } from "../../report/index.js";
import { markup } from "../html/markup.js";
import type { Content } from "../html/markup.js";
import { columnsOf, table } from "../html/table.js";
import type { PageParts } from "../page-parts.js";

/** Figures of a radio that the plan file holds, in words. */
const RADIO_FIGURES = {
  txPowerDbm: "transmit power, dBm",
  txGainDbi: "transmitter antenna, dBi",
  rxGainDbi: "receiver antenna, dBi",
  enclosureLossDb: "enclosure, dB",
  sensitivityDbm: "sensitivity, dBm",
  requiredCiDb: "C/I needed, dB",
  noiseFigureDb: "noise figure, dB",
} as const;

/** The radios' figures with their sources; systems of one radio are told of once. */
export function figureSources({ report, figures }: PageParts): Content {
  const systems = report.rooms.venue.systems;
  const firstOf = new Map(
    systems.map((system) => [JSON.stringify(system.profile), system] as const).reverse(),
  );
  const rows = systems
    .filter((system) => firstOf.get(JSON.stringify(system.profile)) === system)
    .flatMap(({ name, profile }) =>
      (Object.keys(RADIO_FIGURES) as (keyof typeof RADIO_FIGURES)[]).map((key) => {
        const at = report.record.assumptions.findIndex((one) => one.name === `system ${name}: ${key}`);
        return [
          profile.name,
          RADIO_FIGURES[key],
          at < 0 ? "" : figures.figure("asIs", `/assumptions/${String(at)}/value`),
          profile[key].status,
          bareSource(profile[key]),
        ];
      }),
    );
  const columns = columnsOf("profile", "figure", "-value", "status", "source");
  return [
    table({ id: "radio-figures", caption: "What a profile says of a radio", columns, rows }),
    markup`<p class="key">stillband profiles NAME prints every figure of a built-in profile. Generic figures stand for no maker's radio: enter your radio's own.</p>\n`,
  ];
}

/** Where models, masks, limits and tables come from, a statement each. */
export function standardSources(report: PlanReport): string[] {
  const { rooms, links, hang, patch } = report;
  return [
    `Path loss: ${rooms.words.path}, unless a room names a model of its own; free space by ITU-R P.525; walls by ITU-R P.2040 at their angle of incidence, or as the venue file states them.`,
    `Fading: ${rooms.words.fade} in sight, Rayleigh where walls and floors take 3 dB or more.`,
    "Wi-Fi: the transmit masks of IEEE 802.11, worst legal skirts; channels and widths by the same standard.",
    ...[...new Set(rooms.plan.systems.map(({ system }) => system.name))].flatMap((name) => {
      const review = links.reviews.get(name);
      return review === undefined
        ? []
        : [
            `Region's rule for ${name}: ${review.rule.title}; band ${sourceWords({ source: review.rule.bandSource, reading: review.rule.bandReading })}.`,
          ];
    }),
    ...(patch === null
      ? []
      : [
          "DMX512: slots, break and refresh by ANSI E1.11; universe numbers by ANSI E1.31; switches on luminaires are common practice, no source.",
        ]),
    ...(hang === null ? [] : tableSources(hang)),
    `${PRACTICE_TITLE}; emergency lighting, overhead work, mains: local code and the authority having jurisdiction decide.`,
  ];
}

/** Of the cords that were chosen. */
function tableSources({ plan }: NonNullable<PlanReport["hang"]>): string[] {
  const origins = plan.circuits.rows.flatMap(({ choice: { conductor } }) =>
    conductor === null
      ? []
      : [conductor.resistanceOrigin, conductor.threeLoadedOrigin, conductor.twoLoadedOrigin],
  );
  const words = [...new Set(origins.map(({ source, status }) => `${source} (${status})`))];
  return words.length === 0 ? [] : [`Cords: ${words.join("; ")}.`];
}
