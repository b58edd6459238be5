/** What is known of how the antennas are placed; what isn't named is to be looked at on site. */
export interface PracticeFacts {
  /** Above the floor. */
  readonly txHeightM?: number | undefined;
  readonly txInRoom?: boolean | undefined;
  readonly txInSight?: boolean | undefined;
  readonly txInRack?: boolean | undefined;
  /** A receiver straight above or below the transmitter. */
  readonly txUnderLuminaire?: boolean | undefined;
  /** Transmitter to the nearest access point. */
  readonly txToAccessPointM?: number | undefined;
  readonly txToNextTxM?: number | undefined;
  /** Receiver antenna to the nearest access point. */
  readonly rxToAccessPointM?: number | undefined;
  /** Receiver antenna to the nearest chain, cord or metal. */
  readonly rxToMetalM?: number | undefined;
  /** Room for the receiver antenna to be moved. */
  readonly rxPlayM?: number | undefined;
  /** Both antennas polarised vertically. */
  readonly allVertical?: boolean | undefined;
}

/** One rule of practice against what is known. */
export interface PracticeCheck {
  readonly code:
    | "tx-in-room"
    | "tx-above-heads"
    | "tx-in-sight"
    | "tx-not-in-rack"
    | "tx-not-under-luminaire"
    | "tx-from-access-point"
    | "tx-from-next-tx"
    | "rx-from-access-point"
    | "rx-clear-of-metal"
    | "rx-can-move"
    | "all-vertical";
  /** `look`: nothing here decides it. */
  readonly state: "kept" | "broken" | "look";
  /** The rule and why, one line. */
  readonly reason: string;
  /** What was given; null where the rule has no length or none was given. */
  readonly figureM: number | null;
  /** What the rule asks for at least; null where it has no length. */
  readonly leastM: number | null;
}

/** Half a wave at 2450 MHz. */
const HALF_WAVE_M = 0.06;

/**
 * Good practice for the antennas of a wireless DMX system, each rule with its reason, in the order in which
 * they are walked through on site.
 * @source common practice, no source
 * @example antennaPractice({ txHeightM: 2 }).find(({ code }) => code === "tx-above-heads").state; // => "broken"
 */
export function antennaPractice(facts: PracticeFacts): PracticeCheck[] {
  const { txUnderLuminaire: under, txInRack } = facts;
  return [
    told("tx-in-room", facts.txInRoom, "transmitter antenna in the room: walls cost dB"),
    least("tx-above-heads", facts.txHeightM, 3, "3 m up or more: a crowd's bodies absorb"),
    told("tx-in-sight", facts.txInSight, "in sight of the receivers: out of sight it fades deeper"),
    told("tx-not-in-rack", opposite(txInRack), "not in a rack: metal shuts it in"),
    told("tx-not-under-luminaire", opposite(under), "not straight under a fixture: a rod's null is there"),
    least(
      "tx-from-access-point",
      facts.txToAccessPointM,
      3,
      "3 m from an access point: each deafens the other",
    ),
    least("tx-from-next-tx", facts.txToNextTxM, 2, "2 m between transmitters: skirts and intermodulation"),
    least(
      "rx-from-access-point",
      facts.rxToAccessPointM,
      2,
      "receivers 2 m from an access point: its skirts",
    ),
    least("rx-clear-of-metal", facts.rxToMetalM, HALF_WAVE_M, "6 cm clear of chain, cord and metal: detuned"),
    least("rx-can-move", facts.rxPlayM, HALF_WAVE_M, "half a wave (6 cm) to move it: the cure for a hole"),
    told("all-vertical", facts.allVertical, "vertical throughout: crossed antennas lose up to 10 dB"),
  ];
}

function told(code: PracticeCheck["code"], kept: boolean | undefined, reason: string): PracticeCheck {
  const state = kept === undefined ? "look" : kept ? "kept" : "broken";
  return { code, state, reason, figureM: null, leastM: null };
}

function least(
  code: PracticeCheck["code"],
  figureM: number | undefined,
  leastM: number,
  reason: string,
): PracticeCheck {
  const kept = figureM === undefined ? undefined : figureM >= leastM - 1e-9;
  return { ...told(code, kept, reason), figureM: figureM ?? null, leastM };
}

function opposite(fact: boolean | undefined): boolean | undefined {
  return fact === undefined ? undefined : !fact;
}
