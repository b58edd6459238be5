import type { PlannedReceiver, PlannedSystem } from "../commissioning/index.js";
import type { ReceiverForecast, RoomsReport } from "../report/index.js";

/** A receiver as a plan file keeps it. */
export function plannedReceiver(forecast: ReceiverForecast): PlannedReceiver {
  const { receiver, system, room, predictedDbm, intervalDbm, workingMarginDb } = forecast;
  return { receiver, system, room, predictedDbm, intervalDbm, workingMarginDb };
}

/**
 * The systems as a plan file keeps them, each judged at its weakest receiver: the one of least working margin, the
 * other systems on the air. Those that can't be planned are left out; margin and clear air are null where a
 * receiver gets no signal at all.
 */
export function plannedSystems({ plan, rooms }: Pick<RoomsReport, "plan" | "rooms">): PlannedSystem[] {
  return plan.systems.map(({ system, channel, fallback, receivers, lostReceivers }) => {
    const [weakest] = receivers;
    const joint = rooms.find(
      (one) => one.system === system.name && one.joint?.receiver === weakest?.receiver,
    )?.joint;
    const isLost = lostReceivers.length > 0 || weakest === undefined;
    return {
      ...{ system: system.name, channel, fallbackChannel: fallback.channel },
      marginDb: isLost ? null : weakest.interferenceMarginDb,
      clearAirRatio: isLost ? null : (joint?.clearAirRatio ?? null),
    };
  });
}
