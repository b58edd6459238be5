import type { Issue } from "../issues/index.js";
import { profileNoiseFloorDbm } from "./noise-floor.js";
import type { RadioProfile } from "./profile.js";

/**
 * Figures of one profile that don't go together; warnings, the figures stand.
 * @param givenKeys the keys that the user gave, as against those of the base
 */
export function profileContradictions(
  profile: RadioProfile,
  givenKeys: ReadonlySet<string>,
  source: string,
): Issue[] {
  const issues: Issue[] = [];
  const warn = (column: string, expected: string): void => {
    issues.push({ code: "contradiction", severity: "warning", source, column, expected, action: "stated" });
  };
  const hearableDbm = profileNoiseFloorDbm(profile) + profile.requiredCiDb.value;
  const sensitivityDbm = profile.sensitivityDbm.value;
  if (sensitivityDbm < hearableDbm - 1e-9)
    warn(
      "sensitivityDbm",
      `${sensitivityDbm} dBm lies below noise floor + required C/I, ${hearableDbm.toFixed(1)} dBm: give noise_figure_db and required_ci_db as well, or noise alone limits the link`,
    );
  const { transmissionsPerFrameCount: sent, universesPerTransmitterCount: universes } = profile;
  const onAirMs = profile.packetMs.value * sent.value * universes.value;
  const frameMs = 1000 / profile.frameRateHz.value;
  if (onAirMs > frameMs + 1e-9)
    warn(
      "packetMs",
      `${profile.packetMs.value} ms × ${sent.value} sent a frame${universes.value > 1 ? ` × ${universes.value} universes` : ""} = ${figure(onAirMs)} ms on the air, but at ${profile.frameRateHz.value} frames a second the next frame is due after ${figure(frameMs)} ms: check packet_ms, transmissions_per_frame_count and frame_rate_hz`,
    );
  if (givenKeys.has("bandwidthMhz") && givenKeys.has("basedOn") && !givenKeys.has("selectivity"))
    warn(
      "bandwidthMhz",
      "a new bandwidth goes with a selectivity of its own: the one of the built-in profile still holds",
    );
  return issues;
}

/** Up to four digits, without zeros at the end. */
function figure(value: number): string {
  return String(Number(value.toPrecision(4)));
}
