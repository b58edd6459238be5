/** Steps that a search may take, however often it starts anew. */
export class StepBudget {
  constructor(private leftCount: number) {}

  /** Takes a step. @returns was there one left? */
  take(): boolean {
    if (this.leftCount <= 0) return false;
    this.leftCount--;
    return true;
  }

  isSpent(): boolean {
    return this.leftCount <= 0;
  }
}
