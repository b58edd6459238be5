import { printable } from "../issues/index.js";
import type { ReceiverLink } from "../venue/index.js";
import { fittedLines } from "./forecast-lines.js";
import { dB } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { bullets, section } from "./section.js";
import { venueAirTable } from "./venue-air-table.js";
import { venueBudgetTable } from "./venue-budget-table.js";
import type { VenueLinkReport } from "./venue-link-report.js";
import { channelWords, HURT_WORDS, mendWords } from "./venue-link-words.js";

/** One receiver of a venue: its budget line by line, what is behind its interference, what would mend it. */
export function venueBudgetSections(report: VenueLinkReport, name: string, style: TextStyle): string[][] {
  return report.systems.flatMap((system) =>
    system.receivers
      .filter(({ receiver }) => receiver.name === name)
      .flatMap((one) => [
        section(
          `${printable(name, 30)} of ${printable(system.system.name, 20)}, ${channelWords(system)}`,
          style,
          [...venueBudgetTable(report, system, one, style), ...fittedLines(system, report, style)],
        ),
        section("What is on the air there, loudest first", style, venueAirTable(report, one, style)),
        section(
          "What hurts, and what would mend it",
          style,
          bullets(hurtsAndMends(report, one, style), style),
        ),
      ]),
  );
}

function hurtsAndMends(
  { words }: VenueLinkReport,
  { hurts, mends }: ReceiverLink,
  style: TextStyle,
): string[] {
  const takes = hurts.map(
    ({ line, lossDb }) => `${HURT_WORDS[line]} ${lossDb === null ? "everything" : dB(lossDb)}`,
  );
  const brings = mends.map(
    (mend) => `${mendWords(mend, words.antenna, style.units)} (then ${dB(mend.workingMarginDb)} to spare)`,
  );
  return [
    takes.length === 0
      ? "Nothing takes more than 10 m in the open would."
      : `Beyond 10 m in the open, this takes: ${takes.join(", ")}.`,
    brings.length === 0
      ? "Nothing that was tried brings half a dB."
      : `What would mend it, each alone: ${brings.join("; ")}.`,
  ];
}
