/** A source on the air by turns: bursts of a fixed length, exponential gaps. */
export interface PulsedSource {
  /** At the receiver, in its channel. */
  readonly levelDbm: number;
  readonly onRatio: number;
  readonly burstMs: number;
}

/** When frames and their transmissions are on the air, and what they bear. */
export interface PacketTerms {
  readonly noiseDbm: number;
  /** Interference plus noise above this at any instant of a transmission spoils it. */
  readonly ceilingDbm: number;
  readonly packetMs: number;
  readonly transmissionsPerFrameCount: number;
  readonly frameRateHz: number;
}

/**
 * The share of frames lost, by adding the powers of all sources burst by burst over time: a transmission is lost
 * when the sum rises above the ceiling while it lasts, a frame when each of its transmissions is.
 */
export function simulatedFrameLoss(
  sources: readonly PulsedSource[],
  terms: PacketTerms,
  frameCount: number,
  random: () => number,
): number {
  const { noiseDbm, ceilingDbm, packetMs, transmissionsPerFrameCount, frameRateHz } = terms;
  const streams = sources.map((source) => burstsWithin(source, random));
  const mw = (levelDbm: number): number => 10 ** (levelDbm / 10);
  const stepMs = 1000 / frameRateHz / transmissionsPerFrameCount;
  let lostCount = 0;
  let startMs = 5000; // a run-in, so that the streams' start is forgotten
  for (let frame = 0; frame < frameCount; frame++) {
    let through = false;
    for (let turn = 0; turn < transmissionsPerFrameCount; turn++, startMs += stepMs) {
      const bursts = streams.flatMap((within, index) =>
        within(startMs, startMs + packetMs).map((beginMs) => ({ beginMs, ...sources[index]! })),
      );
      // Power rises only where a burst begins; those already on begin before the transmission.
      const risesMs = [
        startMs,
        ...bursts.map(({ beginMs }) => beginMs).filter((beginMs) => beginMs > startMs),
      ];
      const spoilt = risesMs.some((timeMs) => {
        const on = bursts.filter(({ beginMs, burstMs }) => beginMs <= timeMs && timeMs < beginMs + burstMs);
        return on.reduce((sum, { levelDbm }) => sum + mw(levelDbm), mw(noiseDbm)) > mw(ceilingDbm);
      });
      through ||= !spoilt;
    }
    if (!through) lostCount++;
  }
  return lostCount / frameCount;
}

/** @returns where the bursts begin that touch a stretch; stretches must be asked for in rising order */
function burstsWithin(
  { onRatio, burstMs }: PulsedSource,
  random: () => number,
): (fromMs: number, toMs: number) => number[] {
  const gapMs = (): number => (-(burstMs * (1 - onRatio)) / onRatio) * Math.log(1 - random());
  let beginsMs = [gapMs()];
  return (fromMs, toMs) => {
    for (let last = beginsMs[beginsMs.length - 1]!; last < toMs; beginsMs.push(last))
      last += burstMs + gapMs();
    beginsMs = beginsMs.filter((beginMs) => beginMs + burstMs > fromMs);
    return beginsMs.filter((beginMs) => beginMs < toMs);
  };
}
