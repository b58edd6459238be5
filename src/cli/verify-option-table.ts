import { CROWD_WORDS, FILES, SCANS, VENUE } from "./option-groups.js";
import type { Option } from "./option-groups.js";

/** The options of `verify`, as they are told in help. */
export const VERIFY_OPTIONS: readonly Option[] = [
  ["--readings <file>", "what the receivers read: a CSV, as hang --sheet checks -o writes it", FILES],
  ["--scan <file-or-folder...>", "a fresh scan; a folder of dated ones shows the drift", FILES],
  ["--since <plan>", "the plan.json that it was planned by", FILES],
  [
    "--house <word>",
    "empty, part or full: the crowd planned for (default the plan's, else full)",
    CROWD_WORDS,
  ],
  ["--not-heard-below <dbm>", "what a receiver still hears (default the radio's sensitivity)"],
  ["--confidence <share>", "of a receiver's interval and a room's mean (default 0.95)"],
  ...SCANS,
  ...VENUE.filter(([flags]) => !flags.startsWith("--crowd")),
];
