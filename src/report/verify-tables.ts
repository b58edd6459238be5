import type { EmitterChange } from "../scan/index.js";
import { printable } from "../issues/index.js";
import { intervalWords } from "./forecast-lines.js";
import { dB, fixed, sharePercent, wholePercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { shortName } from "./rooms-words.js";
import { clipped, tableLines } from "./text-layout.js";
import type { VerifiedBand, VerifiedReadings, VerifyReport } from "./verify-report.js";
import { cellName, CHECK_WORDS, signedTenth } from "./verify-words.js";

/** Every receiver: predicted, measured, difference, interval; what fails first. */
export function readingsTable({ comparison }: VerifiedReadings, { columnCount }: TextStyle): string[] {
  const order = ["antenna-suspect", "not-heard", "low", "high", "as-planned", "not-read"];
  const sorted = [...comparison.receivers].sort(
    (a, b) => order.indexOf(a.verdict) - order.indexOf(b.verdict),
  );
  const rows = sorted.map((one) => [
    CHECK_WORDS[one.verdict],
    cellName(one.receiver),
    clipped(printable(one.room, 60), 9),
    fixed(one.predictedDbm, 1),
    intervalWords(one.intervalDbm),
    one.measuredDbm === null ? (one.readingCount === 0 ? "" : "none") : fixed(one.measuredDbm, 1),
    one.differenceDb !== null
      ? signedTenth(one.differenceDb)
      : one.differenceAtMostDb === null
        ? ""
        : `<${signedTenth(one.differenceAtMostDb)}`,
    one.measuredMarginDb === null ? "" : fixed(one.measuredMarginDb, 1),
  ]);
  return tableLines(
    [
      { head: "", align: "left" },
      { head: "receiver", align: "left" },
      { head: "room", align: "left" },
      { head: "plan", align: "right" },
      { head: "interval", align: "right" },
      { head: "read", align: "right" },
      { head: "off", align: "right" },
      { head: "spare", align: "right" },
    ],
    rows,
    columnCount,
  );
}

/** Each room's mean difference, suspects left out. */
export function roomsTable({ comparison }: VerifiedReadings, { columnCount }: TextStyle): string[] {
  const rows = comparison.rooms.map(({ room, receiverCount, biasDb, biasIntervalDb, verdict }) => [
    cellName(room),
    String(receiverCount),
    biasDb === null ? "" : `${signedTenth(biasDb)} dB`,
    biasIntervalDb === null ? "" : biasIntervalDb.map(signedTenth).join(" to "),
    verdict === "low" ? "x LOW as a whole" : verdict === "high" ? "! high as a whole" : ROOM_WORDS[verdict],
  ]);
  return tableLines(
    [
      { head: "room", align: "left" },
      { head: "receivers", align: "right" },
      { head: "mean off", align: "right" },
      { head: "interval of the mean", align: "right" },
      { head: "", align: "left" },
    ],
    rows,
    columnCount,
  );
}

const ROOM_WORDS = {
  "as-planned": "o as planned",
  "not-judged": "not judged: fewer than two heard",
} as const;

/** Each planned channel in today's ranking. */
export function channelsTable({ band, channels }: VerifyReport, { columnCount }: TextStyle): string[] {
  const rows = channels.map(({ system, channel, centreMhz }) => {
    const today = band?.comparison.systems.find((one) => one.system === system);
    const judged = band?.systems.find((one) => one.system === system);
    return [
      cellName(system),
      channel === null ? "none" : `${channel} (${centreMhz ?? "?"} MHz)`,
      ...(today === undefined
        ? ["", "", "", judged?.reason ?? ""]
        : [
            dB(today.marginDb),
            sharePercent(today.clearAirRatio ?? 0),
            today.bestChannel === null ? "none" : `${today.bestChannel}, ${signedTenth(today.behindDb ?? 0)}`,
            `${VERDICTS[today.verdict]} at ${shortName(judged?.receiver ?? "")}`,
          ]),
    ];
  });
  return tableLines(
    [
      { head: "system", align: "left" },
      { head: "radio ch", align: "left" },
      { head: "margin", align: "right" },
      { head: "clear", align: "right" },
      { head: "best, dB", align: "left" },
      { head: "today", align: "left" },
    ],
    rows,
    columnCount,
  );
}

const VERDICTS = {
  "still-best": "o best",
  "as-good": "o as good",
  beaten: "x beaten",
  fails: "x FAILS",
  "not-ranked": "x not to use",
} as const;

/** Sources that changed, the most first; each kind by its count. */
export function changesTable({ comparison }: VerifiedBand, { columnCount }: TextStyle): string[] {
  const { newSources, movedSources, airtimeChanges, levelChanges, goneSources } = comparison;
  const told = new Set<EmitterChange>();
  const kinds = [
    ["new", [...newSources].sort((a, b) => b.after!.levelDbm - a.after!.levelDbm)],
    ["moved", movedSources],
    ["airtime", airtimeChanges],
    ["level", levelChanges],
    ["gone", goneSources],
  ] as const;
  const rows = kinds.flatMap(([kind, changes]) =>
    changes.flatMap((change) => {
      if (told.has(change)) return [];
      told.add(change);
      return [changeRow(kind, change)];
    }),
  );
  const lines = tableLines(
    [
      { head: "", align: "left" },
      { head: "Wi-Fi ch", align: "left" },
      { head: "level dBm", align: "left" },
      { head: "airtime", align: "left" },
      { head: "source", align: "left" },
    ],
    rows.slice(0, MOST_CHANGES),
    columnCount,
  );
  const more = rows.length - MOST_CHANGES;
  return more > 0 ? [...lines, `(and ${more} more; --json has them all)`] : lines;
}

const MOST_CHANGES = 14;

function changeRow(kind: string, { emitter, names, before, after }: EmitterChange): string[] {
  const pair = (then: string | undefined, now: string | undefined): string =>
    then === undefined || now === undefined || then === now ? (now ?? then ?? "") : `${then} > ${now}`;
  const airtime = (state: EmitterChange["before"]): string | undefined =>
    state === null ? undefined : `${wholePercent(state.airtimeRatio)}${state.airtimeAssumed ? "?" : ""}`;
  return [
    kind,
    pair(before?.channel.toString(), after?.channel.toString()),
    pair(
      before === null ? undefined : fixed(before.levelDbm, 0),
      after === null ? undefined : fixed(after.levelDbm, 0),
    ),
    pair(airtime(before), airtime(after)),
    names.length === 0 ? `hidden, ${emitter}` : `"${printable(names[0]!, 32)}"`,
  ];
}
