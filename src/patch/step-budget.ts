import { throwIfAborted } from "../issues/index.js";
import type { StopSignal } from "../issues/index.js";

const STEPS_BETWEEN_LOOKS = 256;

/** Steps that a search may take, however often it starts anew. */
export class StepBudget {
  constructor(
    private leftCount: number,
    private readonly signal?: StopSignal,
  ) {}

  /** Takes a step. @returns was there one left? @throws the signal's reason when it is aborted */
  take(): boolean {
    if (this.leftCount <= 0) return false;
    if (this.leftCount % STEPS_BETWEEN_LOOKS === 0) throwIfAborted(this.signal);
    this.leftCount--;
    return true;
  }

  isSpent(): boolean {
    return this.leftCount <= 0;
  }
}
