import type { SystemPlacement } from "./place-report.js";
import { verdictWord } from "./verdict-mark.js";

/** What to do for one system, in order: one line of the opening block, or two where nothing serves. */
export function placeSteps({ plan, joint }: SystemPlacement): (readonly [label: string, words: string])[] {
  const { choice, pair, system } = plan;
  const pairDb = joint?.twoMarginDb ?? pair?.leastMarginDb ?? -Infinity;
  if (choice !== null && verdictWord(choice.leastMarginDb) !== "fails") {
    const place =
      choice.from === "planned"
        ? "leave it there"
        : choice.from === "candidate"
          ? system.transmitter === null
            ? "put it there"
            : "move it there"
          : "find what carries an antenna there";
    return [["Do", numbered([place, ...(system.profile.generic ? ["enter your radio's figures"] : [])])]];
  }
  if (verdictWord(pairDb) !== "fails")
    return [["Do", numbered(["two transmitters, as below", "stillband rooms for their channels"])]];
  return [
    ["Do", numbered(["stillband link: what limits it", "stillband rooms: what Wi-Fi to fix"])],
    [
      "",
      numbered(
        [...(system.profile.hopping === null ? ["a hopping profile"] : []), "do not sell it as wireless"],
        3,
      ),
    ],
  ];
}

function numbered(steps: readonly string[], first = 1): string {
  return steps.map((step, index) => `${first + index} ${step}`).join("; ");
}
