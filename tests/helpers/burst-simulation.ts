/** One source of harmful bursts: fixed length, exponential gaps. */
export interface BurstSource {
  readonly onRatio: number;
  readonly burstMs: number;
}

/**
 * The share of transmissions of a given length that meet no burst, by simulating every burst of every source over
 * time. Transmissions begin at regular intervals that share no period with the bursts, whatever is on the air then.
 */
export function simulatedSuccessRatio(
  sources: readonly BurstSource[],
  packetMs: number,
  transmissionCount: number,
  random: () => number,
): number {
  const streams = sources.map(({ onRatio, burstMs }) => burstStream(onRatio, burstMs, random));
  let successCount = 0;
  // A second's run-in, so that the start of the streams is forgotten.
  let startMs = 1000;
  for (let count = 0; count < transmissionCount; count++, startMs += 22.7 + 7 * random()) {
    const [fromMs, toMs] = [startMs, startMs + packetMs];
    // Every stream is advanced, also when an earlier one has spoilt the transmission.
    const spoilt = streams.filter((meets) => meets(fromMs, toMs));
    if (spoilt.length === 0) successCount++;
  }
  return successCount / transmissionCount;
}

/** @returns does a burst touch the stretch? Stretches must be asked for in rising order. */
function burstStream(
  onRatio: number,
  burstMs: number,
  random: () => number,
): (fromMs: number, toMs: number) => boolean {
  const meanGapMs = (burstMs * (1 - onRatio)) / onRatio;
  const gapMs = (): number => -meanGapMs * Math.log(1 - random());
  let beginMs = gapMs();
  return (fromMs, toMs) => {
    while (beginMs + burstMs <= fromMs) beginMs += burstMs + gapMs();
    return beginMs < toMs;
  };
}
