import { COMMANDS } from "./program.js";

const FIRST = `stillband plans wireless DMX at 2.4 GHz from scans of the band.

First, scan where the receivers will hang, and give the scan to stillband:
  sudo iw dev wlan0 scan > hall.txt                  on a Linux laptop
  stillband channel --place hall --crowd empty hall.txt
`;

/** What comes next: a heading, then commands and what each is for. */
const NEXT: readonly (readonly [heading: string, lines: readonly (readonly [string, string])[]])[] = [
  [
    "Then:",
    [
      ["survey hall.txt", "what is on the band, how far to trust it"],
      ["link", "how far the radio goes with nothing on the band"],
      ["profiles", "the radio's figures; enter your own"],
    ],
  ],
  [
    "A whole building:",
    [
      ["init hall.txt", "a venue file to fill in"],
      ["rooms venue.yaml", "every room's channel"],
      ["plan venue.yaml", "all of it: channels, places, paper, one report"],
      ["verify venue.yaml", "after install: do the readings match the plan"],
    ],
  ],
  [
    "Help:",
    [
      ["completion bash", "makes your shell complete all this; zsh, fish"],
      ["--help", "all commands"],
    ],
  ],
];

/** @returns what `stillband` alone says: what to do first, of the commands that there are */
export function welcomeText(): string {
  const known = (words: string): boolean =>
    words.startsWith("-") || COMMANDS.some(({ name }) => name === words.split(" ")[0]);
  const blocks = NEXT.map(([heading, lines]) => {
    const told = lines.filter(([words]) => known(words));
    return `\n${heading}\n${told.map(([words, meaning]) => `  stillband ${words.padEnd(20)}${meaning}\n`).join("")}`;
  });
  return FIRST + blocks.join("");
}
