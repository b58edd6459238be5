import { dB, fixed } from "./number-format.js";
import type { RoomsReport } from "./rooms-report.js";
import { shortName } from "./rooms-words.js";

/** What is proved of the joint plan, what the other columns mean, and what it leaves out. */
export function jointStatements({ plan, terms }: RoomsReport): string[] {
  const { proof, systems, excluded } = plan;
  return [
    ...(proof === null ? [] : [proofWords(proof, terms.timeLimitS)]),
    ...naiveWords(plan),
    "To spare: jointly, at the weakest receiver. Alone: on its own best channel, the other systems silent. If apart: the same with each on its own best channel, all on the air.",
    ...(systems.some(({ isSettled }) => isSettled) ? ["= a channel that the venue file settles."] : []),
    ...(systems.some(({ isCandidate }) => isCandidate)
      ? ["? from the first candidate, as the transmitter is not placed: stillband place compares them."]
      : []),
    ...systems.flatMap(({ system, lostReceivers }) =>
      lostReceivers.length === 0
        ? []
        : [
            `${shortName(system.name)}: no signal arrives at ${lostReceivers.map(shortName).join(", ")}, in an antenna's true null, on any channel; the plan is made for the others.`,
          ],
    ),
    ...excluded.map(({ system, reason }) => `${shortName(system)} is left out: ${reason}.`),
  ];
}

type Plan = RoomsReport["plan"];

function proofWords(
  { optimal, boundDb, minMarginDb, provedCount }: NonNullable<Plan["proof"]>,
  timeLimitS: number | null,
): string {
  if (!optimal)
    return `Not proved: the best found ${timeLimitS === null ? "within its count of steps" : `in ${timeLimitS} s`} has ${dB(minMarginDb)} at the weakest receiver of all; no plan has more than ${dB(boundDb)}. ${timeLimitS === null ? "stillband rooms --time-limit" : "--time-limit"} gives it longer.`;
  const next = provedCount > 1 ? ` So it is for the ${provedCount} weakest systems in turn, to 0.25 dB.` : "";
  return `Proved: no other choice of channels leaves the weakest receiver of all more than ${dB(minMarginDb)}.${next}`;
}

function naiveWords({ proof, systems }: Plan): string[] {
  const chosen = systems.filter(({ isHopping }) => !isHopping);
  if (proof === null || chosen.length < 2) return [];
  const each = chosen.map(({ system, alone }) => `${shortName(system.name)} ${alone.channel}`).join(", ");
  const lost = chosen
    .map(({ system, naive, workingMarginDb }) => ({
      name: shortName(system.name),
      lossDb: workingMarginDb - naive.workingMarginDb,
    }))
    .filter(({ lossDb }) => lossDb >= 0.05)
    .sort((a, b) => b.lossDb - a.lossDb);
  const losers = lost.map(({ name, lossDb }) => `${name} ${fixed(lossDb, 1)} dB worse`).join(", ");
  const least = `${dB(proof.naiveMinMarginDb)} at the weakest instead of ${dB(proof.minMarginDb)}`;
  return [`Each on its own best channel (${each}): ${least}${losers === "" ? "" : `; ${losers}`}.`];
}
