import { group } from "d3-array";
import { ArgumentError, requireFinite } from "../issues/index.js";
import { SLACK } from "../units/index.js";
import { withAntennaSuspects } from "./antenna-suspects.js";
import { nameKey } from "./name-key.js";
import { measureReceiver } from "./measure-receiver.js";
import { requireConfidence } from "./path-loss-readings.js";
import type { ReceiverCheck, ReceiverPrediction, ReceiverReading } from "./receiver-check.js";
import { roomChecks } from "./room-check.js";
import type { RoomCheck } from "./room-check.js";

/** Something that must be put right, or looked at, before the hand-over. */
export interface ReadingsFinding {
  readonly code: "receiver-low" | "not-heard" | "antenna-suspect" | "margin-fails" | "room-low" | "not-read";
  /** A `failure` fails the check; a `warning` does not. */
  readonly severity: "failure" | "warning";
  readonly room: string;
  /** Null where it is about the room. */
  readonly receiver: string | null;
}

/** Readings after install against the plan. */
export interface ReadingsComparison {
  readonly verdict: "as-planned" | "fails" | "not-read";
  readonly findings: readonly ReadingsFinding[];
  /** In the order of the predictions. */
  readonly receivers: readonly ReceiverCheck[];
  readonly rooms: readonly RoomCheck[];
  /** Readings whose receiver the plan doesn't know, or that name none. */
  readonly strangers: readonly ReceiverReading[];
}

/**
 * Readings after install against the plan, receiver by receiver and room by room. Names are compared without
 * regard to capitals and the blanks around them. It fails where a receiver is below its interval, not heard, low
 * among good neighbours or without working margin, and where a room as a whole is low; a receiver that was not
 * read is a warning.
 * @param options confidenceRatio of the room's mean, 0.5 … 0.9999; 0.95 unless given
 * @throws {ArgumentError} when a figure is not finite, an interval doesn't hold its prediction or two predictions
 *   are of one receiver
 * @example
 * const plan = ["P1", "P2"].map((receiver) => ({ receiver, room: "hall", predictedDbm: -60, intervalDbm: [-72, -48] }));
 * const readings = [{ receiver: "P1", receivedDbm: -61, floorDbm: null }, { receiver: "P2", receivedDbm: -80, floorDbm: null }];
 * compareReadings(plan, readings).findings[0]; // => { code: "receiver-low", severity: "failure", room: "hall", receiver: "P2" }
 */
export function compareReadings(
  predictions: readonly ReceiverPrediction[],
  readings: readonly ReceiverReading[],
  options: { readonly confidenceRatio?: number } = {},
): ReadingsComparison {
  const { confidenceRatio = 0.95 } = options;
  requireConfidence(confidenceRatio);
  requirePredictions(predictions);
  for (const { receivedDbm } of readings) if (receivedDbm !== null) requireFinite("receivedDbm", receivedDbm);
  const own = group(readings, ({ receiver }) => nameKey(receiver ?? ""));
  const known = new Set(predictions.map(({ receiver }) => nameKey(receiver)));
  const measured = predictions.map((each) => measureReceiver(each, own.get(nameKey(each.receiver)) ?? []));
  const receivers = withAntennaSuspects(measured, predictions);
  const rooms = roomChecks(receivers, confidenceRatio);
  const findings = [...receivers.flatMap(receiverFindings), ...rooms.flatMap(roomFinding)].sort(
    (a, b) => Number(a.severity === "warning") - Number(b.severity === "warning"),
  );
  return {
    verdict: verdictOf(receivers, findings),
    findings,
    receivers,
    rooms,
    strangers: readings.filter(({ receiver }) => !known.has(nameKey(receiver ?? ""))),
  };
}

function verdictOf(
  receivers: readonly ReceiverCheck[],
  findings: readonly ReadingsFinding[],
): ReadingsComparison["verdict"] {
  if (findings.some(({ severity }) => severity === "failure")) return "fails";
  return receivers.every(({ readingCount }) => readingCount === 0) ? "not-read" : "as-planned";
}

function receiverFindings({ receiver, room, verdict, measuredMarginDb }: ReceiverCheck): ReadingsFinding[] {
  const codes: ReadingsFinding["code"][] = [];
  if (verdict === "antenna-suspect" || verdict === "not-heard" || verdict === "not-read") codes.push(verdict);
  if (verdict === "low") codes.push("receiver-low");
  if (measuredMarginDb !== null && measuredMarginDb < -SLACK) codes.push("margin-fails");
  return codes.map((code) => ({
    code,
    severity: code === "not-read" ? "warning" : "failure",
    room,
    receiver,
  }));
}

function roomFinding({ room, verdict }: RoomCheck): ReadingsFinding[] {
  return verdict === "low" ? [{ code: "room-low", severity: "failure", room, receiver: null }] : [];
}

function requirePredictions(predictions: readonly ReceiverPrediction[]): void {
  const seen = new Set<string>();
  for (const { receiver, predictedDbm, intervalDbm, workingMarginDb } of predictions) {
    if (seen.has(nameKey(receiver))) throw new ArgumentError("receiver", "one prediction for each", receiver);
    seen.add(nameKey(receiver));
    requireFinite(`predictedDbm of ${receiver}`, predictedDbm);
    if (typeof workingMarginDb === "number") requireFinite(`workingMarginDb of ${receiver}`, workingMarginDb);
    if (!(intervalDbm[0] <= predictedDbm && predictedDbm <= intervalDbm[1]))
      throw new ArgumentError(
        `intervalDbm of ${receiver}`,
        `an interval around ${predictedDbm}`,
        intervalDbm,
      );
  }
}
