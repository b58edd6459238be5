import { tenThousandths } from "./csv-table.js";
import type { CsvTable } from "./csv-table.js";
import { verdictWord } from "./verdict-mark.js";
import type { VenueLinkReport } from "./venue-link-report.js";

/** Every receiver's link as a table for a spreadsheet, a row a receiver, each system's weakest first. */
export function linksCsv({ systems }: VenueLinkReport): CsvTable {
  return {
    heads: HEADS,
    rows: systems.flatMap(({ system, transmitter, receivers }) =>
      receivers.map(({ receiver, judged, frames }) => {
        const { link, budget, channel, centreMhz, clearAirRatio } = judged;
        return [
          ...[
            system.name,
            receiver.room,
            receiver.name,
            receiver.luminaires.join(" "),
            transmitter?.name ?? null,
          ],
          ...[channel, centreMhz, link.distanceM, receiver.heightM],
          ...[
            finite(budget.receivedDbm),
            finite(budget.sensitivityMarginDb),
            finite(budget.interferenceMarginDb),
          ],
          ...[budget.fadeAllowanceDb, finite(budget.workingMarginDb), verdictWord(budget.workingMarginDb)],
          ...[budget.limit, clearAirRatio, frames.typical.lossRatio, frames.edge.lossRatio],
          link.inSight ? "yes" : "no",
        ].map(tenThousandths);
      }),
    ),
  };
}

const HEADS = [
  ...["system", "room", "receiver", "luminaires", "transmitter", "radio_channel", "centre_mhz", "distance_m"],
  ...["height_m", "received_dbm", "over_sensitivity_db", "over_interference_db", "fade_allowance_db"],
  ...["to_spare_db", "verdict", "limit", "clear_air_ratio", "lost_ratio", "lost_at_edge_ratio", "in_sight"],
];

/** A blank cell where an antenna's null leaves no signal. */
function finite(valueDb: number): number | null {
  return Number.isFinite(valueDb) ? valueDb : null;
}
