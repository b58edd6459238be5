import { OFF_ASK, REQUEST_TITLE, requestStatements } from "../../report/index.js";
import type { RoomsReport } from "../../report/index.js";
import { list, markup } from "../html/markup.js";
import type { Content } from "../html/markup.js";
import { part } from "../html/sheet.js";
import type { Sheet } from "../html/sheet.js";
import { columnsOf, table } from "../html/table.js";
import type { PageParts } from "../page-parts.js";

type Request = NonNullable<RoomsReport["request"]>;

/** What the building's network staff are asked for, what it is worth, and what we radiate in return. */
export function networkSheet(parts: PageParts): Sheet {
  const { request } = parts.report.rooms;
  return {
    id: "network",
    title: REQUEST_TITLE,
    whom: "the building's network staff",
    body:
      request === null ? markup`<p>Nothing to ask for: no system can be planned.</p>` : body(request, parts),
  };
}

function body(request: Request, parts: PageParts): Content {
  const { fix, presumed, terms } = requestStatements(request, parts.report.rooms.survey);
  return [
    part("What we ask", list([fix, ...presumed, `${OFF_ASK}.`])),
    request.fixes.length === 0 ? null : part("Radios to fix", fixes(request, parts)),
    request.nearby.length === 0 ? null : part("Radios in and beside our rooms", nearby(request, parts)),
    request.systems.length === 0 ? null : part("What it is worth to us", worth(request, parts)),
    part("What it rests on, and what we radiate in return", radiated(request, parts), list(terms)),
    markup`<p class="key">Other people's network names are left out${parts.report.showsNames ? " no longer: they were asked for" : "; so are those of radios that are only presumed to be the building's"}.</p>\n`,
  ];
}

function fixes({ fixes: radios }: Request, { figures, sources }: PageParts): Content {
  const rows = radios.map(({ emitter, wifiChannel, scannedWifiChannel, system }, index) => {
    const at = `/rooms/request/fix/${String(index)}`;
    const channel = figures.figure("asIs", `${at}/wifiChannel`);
    const scanned = figures.figure("asIs", `${at}/scannedWifiChannel`);
    return [
      sources.staffNameOf(emitter),
      wifiChannel === scannedWifiChannel ? [channel, " as now"] : [channel, " from ", scanned],
      figures.figure("wholeDbm", `${at}/levelDbm`),
      sources.placeOf(emitter),
      system === null ? "" : system,
      system === null ? "" : figures.figure("dB", `${at}/workingMarginIfMovedDb`),
    ];
  });
  const columns = columnsOf("radio", "Wi-Fi ch", "-loudest", "at", "if it moved: system", "-has left");
  const caption = "The most urgent first: its channel, 20 MHz wide, nothing automatic";
  return table({ id: "fixes", caption, columns, rows });
}

const KNOWN = { in: "in it", beside: "beside it", "by-level": "by its level" } as const;

function nearby({ nearby: radios }: Request, { figures, sources }: PageParts): Content {
  const rows = radios.map(({ emitter, room, known }, index) => [
    sources.staffNameOf(emitter),
    room,
    KNOWN[known],
    figures.figure("wholeDbm", `/rooms/request/off/${String(index)}/levelDbm`),
  ]);
  const caption = "2.4 GHz off where guests can use 5 or 6 GHz";
  return table({ id: "nearby", caption, columns: columnsOf("radio", "room", "known", "-loudest"), rows });
}

function worth({ systems }: Request, { figures }: PageParts): Content {
  const rows = systems.map(({ system, channel, reason }, index) => {
    const at = `/rooms/request/systems/${String(index)}`;
    const keys = ["workingMarginDb", "ifWifiMovesDb", "ifGrantedDb", "ifOffDb"];
    return [
      system,
      channel === null ? "hops" : figures.figure("asIs", `${at}/channel`),
      ...keys.map((key) => figures.figure("dB", `${at}/${key}`, { none: reason })),
    ];
  });
  const heads = ["system", "-radio ch", "-to spare now", "-if Wi-Fi moves", "-granted", "-and 2.4 GHz off"];
  const caption = "What each system's weakest receiver has to spare";
  return table({ id: "worth", caption, columns: columnsOf(...heads), rows, isFixed: true });
}

function radiated({ systems }: Request, { figures }: PageParts): Content {
  const rows = systems.map(({ system, radiates: { centresMhz } }, index) => {
    const at = `/rooms/request/systems/${String(index)}/radiates`;
    const first = figures.figure("mhz", `${at}/centresMhz/0`);
    const last = figures.figure("mhz", `${at}/centresMhz/${String(centresMhz.length - 1)}`);
    return [
      system,
      centresMhz.length === 1 ? first : [first, " to ", last],
      figures.figure("mhz", `${at}/bandwidthMhz`),
      figures.figure("dBm", `${at}/eirpDbm`),
      figures.figure("whole", `${at}/airtimeRatio`),
    ];
  });
  const columns = columnsOf("system", "-at", "-wide", "-EIRP", "-on the air");
  return table({
    id: "radiated",
    caption: "What our systems radiate, during set-up and the event only",
    columns,
    rows,
    isFixed: true,
  });
}
