import type { VerifyFinding, VerifyReport } from "../report/index.js";

type Looked = Pick<VerifyReport, "plan" | "readings" | "band" | "watch">;

/** All that fails the check, then the warnings. */
export function verifyFindings({ plan, readings, band, watch }: Looked): VerifyFinding[] {
  const nobody = { system: null, room: null, receiver: null, name: null };
  const ofReadings = (readings?.comparison.findings ?? []).map((finding): VerifyFinding => ({
    ...nobody,
    ...finding,
    system: readings!.forecasts.find(({ receiver }) => receiver === finding.receiver)?.system ?? null,
  }));
  const ofBand = (band?.comparison.systems ?? []).flatMap(({ system, verdict }): VerifyFinding[] => {
    const code = CHANNEL_CODES[verdict];
    const judged = band!.systems.find((one) => one.system === system);
    const where = { system, room: judged?.room ?? null, receiver: judged?.receiver ?? null };
    return code === null ? [] : [{ ...nobody, code, severity: "failure", ...where }];
  });
  const ofWatch = (watch?.systems ?? []).flatMap(({ system, watch: its }): VerifyFinding[] =>
    its.firstFailure === null
      ? []
      : [
          {
            ...nobody,
            code: "channel-failed-once",
            severity: "failure",
            system,
            name: its.firstFailure.date,
          },
        ],
  );
  const ofPlan = [
    ...(plan?.comparison.inputs ?? []).map(({ input }) => ["input-changed", input] as const),
    ...(plan?.comparison.assumptions ?? []).map(({ name }) => ["assumption-changed", name] as const),
  ].map(([code, name]): VerifyFinding => ({ ...nobody, code, severity: "warning", name }));
  const all = [...ofReadings, ...ofBand, ...ofWatch, ...ofPlan];
  return [
    ...all.filter(({ severity }) => severity === "failure"),
    ...all.filter(({ severity }) => severity === "warning"),
  ];
}

const CHANNEL_CODES = {
  "still-best": null,
  "as-good": null,
  beaten: "channel-beaten",
  fails: "channel-fails",
  "not-ranked": "channel-not-ranked",
} as const;
