import type { CheckPart, InstallCheck } from "./install-check.js";
import { notes, readingRow, tick } from "./install-check.js";
import type { InstallLuminaire, InstallReceiver, InstallSystem, InstallTerms } from "./install-terms.js";
import { receiverTurns } from "./receiver-turns.js";

/** On the lift: power before the cord is cut, the end of every cable, the link at trim. */
export function checksLift({ receivers, luminaires }: InstallTerms): InstallCheck[] {
  return receiverTurns({ luminaires, receivers }).flatMap(({ luminaire, receivers: own }) => [
    ...(luminaire === null ? [] : [powerCheck(luminaire)]),
    ...own.flatMap((receiver) => [...terminatorCheck(receiver), trimCheck(receiver, luminaires)]),
  ]);
}

function powerCheck({ name }: InstallLuminaire): InstallCheck {
  return tick("lift", "power-made-up", name, `${name}: power made up at the box before the cord is cut.`);
}

function terminatorCheck({ name, luminaires }: InstallReceiver): InstallCheck[] {
  const last = luminaires.at(-1);
  if (last === undefined) return [];
  const words = `Cable of ${name}: the last wired device, ${last}, is terminated with 120 Ω.`;
  return [tick("lift", "terminated", name, words)];
}

function trimCheck(
  { name, system, luminaires: served, predictedDbm }: InstallReceiver,
  luminaires: readonly InstallLuminaire[],
): InstallCheck {
  const trimHeightM = luminaires.find((one) => served.includes(one.name))?.trimHeightM ?? null;
  const height: CheckPart[] = trimHeightM === null ? ["at trim"] : ["at trim, ", { lengthM: trimHeightM }];
  const planned = predictedDbm === null ? "" : `; the plan expects ${predictedDbm.toFixed(1)} dBm`;
  return {
    ...tick("lift", "link-at-trim", name, `${name}: link seen `, ...height, `${planned}.`),
    blanks: readingRow(name, system),
  };
}

/** With all of a room up: what happens when power or radio goes. */
export function checksRoom({ systems, receivers, luminaires }: InstallTerms): InstallCheck[] {
  const noRdm = "RDM is not assumed over the air: whatever it would set was set on the ground.";
  return [
    tick("room", "no-rdm", null, noRdm),
    ...systems.map((system) => powerCutCheck(system)),
    ...systems.map(({ name }) => lossCheck(name, receivers, luminaires)),
  ];
}

function powerCutCheck({ name, relinkS }: InstallSystem): InstallCheck {
  const sheet = relinkS === null ? "" : ` Its data sheet says ${relinkS} s.`;
  const words = `Building power cut and restored: every receiver of ${name} links again unaided.${sheet}`;
  return {
    ...tick("room", "power-cut", name, words),
    blanks: notes("relink_s", "remark"),
  };
}

function lossCheck(
  system: string,
  receivers: readonly InstallReceiver[],
  luminaires: readonly InstallLuminaire[],
): InstallCheck {
  const served = new Set(
    receivers.filter((one) => one.system === system).flatMap((one) => [...one.luminaires]),
  );
  const states = luminaires
    .filter(({ name }) => served.has(name))
    .map(({ name, onLinkLoss }) => `${name} ${onLinkLoss}`);
  const words = `Transmitter of ${system} off; loss state as specified: ${states.join(", ") || "no luminaire"}.`;
  return {
    ...tick("room", "transmitter-off", system, words),
    blanks: notes("loss_state", "remark"),
  };
}

/** What is done again on the last day, and on the first night that counts. */
export function checksHandover(): InstallCheck[] {
  const handover = "Scan repeated on handover day, at the places of the survey.";
  const fullHouse = "Scan repeated at the first full event.";
  return [
    { ...tick("handover", "handover-scan", null, handover), blanks: notes("scan_file", "scan_time") },
    { ...tick("handover", "full-house-scan", null, fullHouse), blanks: notes("scan_file", "scan_time") },
  ];
}
