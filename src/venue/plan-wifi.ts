import type { ChannelPlan } from "./plan-channel.js";
import { radiated } from "./radiated.js";
import type { Radiated } from "./radiated.js";
import { planWifiMoves } from "./wifi-moves.js";
import type { WifiMoves } from "./wifi-moves.js";
import { ASSUMED_AP_POWER_DBM, wifiNeighbours } from "./wifi-neighbours.js";
import type { WifiNeighbour } from "./wifi-neighbours.js";
import { planWifiRequest } from "./wifi-request.js";
import type { WifiRequest } from "./wifi-request.js";
import type { WifiScene } from "./wifi-scene.js";

/** The plan and the Wi-Fi around it: what its moves would do to us, what to ask, what we do to it. */
export interface WifiPlan {
  readonly moves: WifiMoves;
  /** Null where the plan has no channel; so is all that follows. */
  readonly request: WifiRequest | null;
  readonly radiated: Radiated | null;
  readonly neighbours: readonly WifiNeighbour[] | null;
  /** Taken for every access point, dBm at its connector. */
  readonly apPowerDbm: number;
}

/**
 * All that a plan has to do with Wi-Fi.
 * @param plan made from the same emitters and sweeps
 * @param apPowerDbm at an access point's connector, dBm; 18 unless given (assumed)
 * @see {@link planChannel}
 */
export function planWifi(
  plan: ChannelPlan,
  scene: WifiScene,
  apPowerDbm: number = ASSUMED_AP_POWER_DBM,
): WifiPlan {
  const ours = radiated(plan);
  const accessPoints = scene.emitters.flatMap(({ id, levelDbm, contentionChannel }) =>
    contentionChannel === null ? [] : [{ id, levelDbm, wifiChannel: contentionChannel }],
  );
  return {
    moves: planWifiMoves(plan, scene),
    request: planWifiRequest(plan, scene),
    radiated: ours,
    neighbours:
      ours === null
        ? null
        : wifiNeighbours(ours, plan.setting.profile.emission.value, accessPoints, apPowerDbm),
    apPowerDbm,
  };
}
