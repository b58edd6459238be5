import { antennaPeakGainDbi } from "../propagation/index.js";
import { antennaWord } from "./antenna-word.js";
import { CliError, EXIT } from "./exit.js";
import type { Figures } from "./figure-words.js";
import { camelCase } from "./radio-figures.js";

/** The options that name antennas, and those that set single figures. */
interface AntennaOptions {
  readonly txAntenna?: string;
  readonly rxAntenna?: string;
  readonly set?: readonly string[];
}

/**
 * The peak gains of the antennas that the options name: the profile's gain figures, by which power is judged
 * and interference received.
 * @throws {CliError} exit 64 for a word that is no antenna, or where `--set` gives the same figure
 */
export function antennaFigures({ txAntenna, rxAntenna, set = [] }: AntennaOptions): Figures {
  const figures: Record<string, number> = {};
  for (const [flag, key, text] of [
    ["--tx-antenna", "txGainDbi", txAntenna],
    ["--rx-antenna", "rxGainDbi", rxAntenna],
  ] as const) {
    if (text === undefined) continue;
    const typed = set.find((word) => camelCase(word.split("=")[0]!) === key);
    if (typed !== undefined)
      throw new CliError(
        EXIT.usage,
        `${flag}: expected no --set ${typed.split("=")[0]!} beside it; the antenna gives the gain`,
        `${flag} ${text}`,
      );
    figures[key] = antennaPeakGainDbi(antennaWord(flag, text));
  }
  return figures;
}
