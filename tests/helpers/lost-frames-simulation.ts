/** A source of harmful bursts by turns with exponential gaps. */
export interface OnOffSource {
  readonly onRatio: number;
  readonly meanBurstMs: number;
  readonly bursts: "exponential" | "fixed";
}

/**
 * Which frames are lost, by simulating every burst of every source: a frame's transmissions are spaced evenly, and
 * it is lost when each of them meets a burst.
 * @returns 1 for a lost frame, 0 for one that gets through
 */
export function simulatedLosses(
  sources: readonly OnOffSource[],
  timing: { packetMs: number; transmissionsPerFrameCount: number; frameRateHz: number },
  frameCount: number,
  random: () => number,
): Uint8Array {
  const streams = sources.map((source) => onOffStream(source, random));
  const stepMs = 1000 / timing.frameRateHz / timing.transmissionsPerFrameCount;
  const lost = new Uint8Array(frameCount);
  // Ten seconds' run-in, so that the start of the streams is forgotten.
  let startMs = 10_000;
  for (let frame = 0; frame < frameCount; frame++) {
    let throughCount = 0;
    for (let turn = 0; turn < timing.transmissionsPerFrameCount; turn++, startMs += stepMs) {
      const met = streams.filter((meets) => meets(startMs, startMs + timing.packetMs));
      if (met.length === 0) throughCount++;
    }
    lost[frame] = throughCount === 0 ? 1 : 0;
  }
  return lost;
}

/** @returns does a burst touch the stretch? Stretches must be asked for in rising order. */
function onOffStream(
  { onRatio, meanBurstMs, bursts }: OnOffSource,
  random: () => number,
): (fromMs: number, toMs: number) => boolean {
  const exponential = (mean: number): number => -mean * Math.log(1 - random());
  const gapMs = (): number => exponential((meanBurstMs * (1 - onRatio)) / onRatio);
  const burstMs = (): number => (bursts === "fixed" ? meanBurstMs : exponential(meanBurstMs));
  let beginMs = gapMs();
  let endMs = beginMs + burstMs();
  return (fromMs, toMs) => {
    while (endMs <= fromMs) {
      beginMs = endMs + gapMs();
      endMs = beginMs + burstMs();
    }
    return beginMs < toMs;
  };
}

/** The share of events of `eventFrameCount` frames that hold a run of k lost frames or more. */
export function shareWithRun(lost: Uint8Array, eventFrameCount: number, k: number): number {
  let [hitCount, eventCount] = [0, 0];
  for (let from = 0; from + eventFrameCount <= lost.length; from += eventFrameCount, eventCount++)
    if (longestRun(lost.subarray(from, from + eventFrameCount)) >= k) hitCount++;
  return hitCount / eventCount;
}

/** The longest run of ones. */
export function longestRun(flags: ArrayLike<number>): number {
  let [longest, current] = [0, 0];
  for (let i = 0; i < flags.length; i++) {
    current = flags[i] === 1 ? current + 1 : 0;
    longest = Math.max(longest, current);
  }
  return longest;
}
