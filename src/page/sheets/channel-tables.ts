import { couplingWords, leastDb } from "../../report/index.js";
import { markup } from "../html/markup.js";
import type { Content } from "../html/markup.js";
import { columnsOf, table } from "../html/table.js";
import { marked } from "../html/verdict.js";
import type { PageParts } from "../page-parts.js";

/** Every system on its channel, and what it would have alone and with each on its own best. */
export function jointTable({ report, figures }: PageParts): Content {
  const rows = report.rooms.plan.systems.map((one, index) => {
    const { system, channel, isSettled, isCandidate, lostReceivers, receivers, alone, naive, fallback } = one;
    const at = `/rooms/joint/systems/${String(index)}`;
    const on = (of: string, none: string): Content => figures.figure("asIs", `${of}/channel`, { none });
    const spare = figures.figure("dB", `${at}/workingMarginDb`);
    const marks = [isSettled ? "=" : "", isCandidate ? "?" : ""].join("");
    return [
      system.name,
      channel === null
        ? ["hops", marks]
        : [on(at, "hops"), " (", figures.figure("mhz", `${at}/centreMhz`), ")", marks],
      marked(leastDb(one), lostReceivers.length > 0 ? ["no signal; else ", spare] : spare),
      lostReceivers[0] ?? receivers[0]!.receiver,
      alone.channel === null ? "hops" : on(`${at}/alone`, "hops"),
      figures.figure("dB", `${at}/alone/workingMarginDb`),
      naive.channel === null ? "hops" : on(`/rooms/naive/systems/${String(index)}`, "hops"),
      figures.figure("dB", `/rooms/naive/systems/${String(index)}/workingMarginDb`),
      on(`${at}/fallback`, fallback.reason ?? "none"),
      figures.figure("dB", `${at}/fallback/workingMarginDb`),
    ];
  });
  const heads = ["system", "radio ch", "-to spare", "weakest", "-alone on", "-has", "-apart on", "-has"];
  return table({
    id: "joint",
    caption: "Every system on its radio channel: dB to spare at its weakest receiver",
    columns: columnsOf(...heads, "-fallback", "-has"),
    rows,
  });
}

/** Rows that the page shows, the dearest first. */
const MOST_COUPLINGS = 60;

/** Who hears whom in the plan, the dearest first. */
export function couplingTable({ report, figures }: PageParts): Content {
  const rows = report.rooms.plan.couplings.slice(0, MOST_COUPLINGS).map(({ into, from, receiver }, index) => {
    const at = `/rooms/coupling/${String(index)}`;
    return [
      into,
      from,
      receiver,
      figures.figure("wholeDbm", `${at}/sameChannelDbm`),
      figures.figure("wholeDbm", `${at}/inChannelDbm`, { none: "nothing" }),
      figures.figure("dB", `${at}/carrierToOtherDb`, { none: "" }),
      figures.figure("cost", `${at}/costDb`),
    ];
  });
  const heads = ["heard by", "from", "most at", "-same ch", "-in the plan", "-C/I", "-costs"];
  const caption = "What the systems put into each other";
  return [
    table({ id: "couplings", caption, columns: columnsOf(...heads), rows }),
    markup`<p class="key">${couplingWords(report.rooms)}${report.rooms.plan.couplings.length > MOST_COUPLINGS ? " The dearest stand here; plan.json has them all." : null}</p>\n`,
  ];
}

/** Each system's channels at the receiver that has the least to spare. */
export function channelTables({ report, figures }: PageParts): Content {
  return report.links.systems.map(({ system, receivers: [weakest] }, index) => {
    if (weakest === undefined || weakest.channels.length === 0) return null;
    const rows = weakest.channels.map(({ budget }, row) => {
      const at = `/links/systems/${String(index)}/receivers/0/channels/${String(row)}`;
      return [
        [figures.figure("asIs", `${at}/channel`), " (", figures.figure("mhz", `${at}/centreMhz`), ")"],
        marked(budget.workingMarginDb, figures.figure("dB", `${at}/workingMarginDb`, { none: "no signal" })),
        figures.figure("dBm", `${at}/interferenceDbm`),
        figures.figure("share", `${at}/clearAirRatio`),
      ];
    });
    const heads = ["radio ch", "-to spare", "-interference + noise", "-clear air"];
    const caption = `System ${system.name} at ${weakest.receiver.name}`;
    return table({ id: `channels-${String(index)}`, caption, columns: columnsOf(...heads), rows });
  });
}
