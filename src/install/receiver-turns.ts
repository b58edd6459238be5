import type { InstallLuminaire, InstallReceiver, InstallTerms } from "./install-terms.js";

/** A luminaire's turn on install day, and the receivers that can be tried once it is done. */
export interface ReceiverTurn {
  /** Null: receivers of which no luminaire is known. */
  readonly luminaire: InstallLuminaire | null;
  /** Those of whose luminaires it is the last. */
  readonly receivers: readonly InstallReceiver[];
}

/** The luminaires in the order of hanging, each receiver at the last of its own. */
export function receiverTurns({
  luminaires,
  receivers,
}: Pick<InstallTerms, "luminaires" | "receivers">): ReceiverTurn[] {
  const lastOf = new Map(
    receivers.map((receiver) => [
      receiver,
      luminaires.filter(({ name }) => receiver.luminaires.includes(name)).at(-1),
    ]),
  );
  const turns: ReceiverTurn[] = luminaires.map((luminaire) => ({
    luminaire,
    receivers: receivers.filter((receiver) => lastOf.get(receiver) === luminaire),
  }));
  const idle = receivers.filter((receiver) => lastOf.get(receiver) === undefined);
  return idle.length === 0 ? turns : [...turns, { luminaire: null, receivers: idle }];
}
