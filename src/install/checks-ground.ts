import type { InstallCheck } from "./install-check.js";
import { notes, tick } from "./install-check.js";
import type { InstallLuminaire, InstallReceiver, InstallSystem, InstallTerms } from "./install-terms.js";
import { settingWords } from "./install-terms.js";
import { receiverTurns } from "./receiver-turns.js";
import { listed } from "./checks-before.js";

const STAGE = "ground";

/** On the ground, within reach: channels, addresses, loss of data, labels, the first link. */
export function checksGround({ systems, receivers, luminaires }: InstallTerms): InstallCheck[] {
  return [
    ...systems.map(channelCheck),
    ...receiverTurns({ luminaires, receivers }).flatMap(({ luminaire, receivers: own }) => [
      ...(luminaire === null ? [] : luminaireChecks(luminaire, receivers, systems)),
      ...own.flatMap((receiver) => receiverChecks(receiver, systems)),
    ]),
  ];
}

function luminaireChecks(
  luminaire: InstallLuminaire,
  receivers: readonly InstallReceiver[],
  systems: readonly InstallSystem[],
): InstallCheck[] {
  return [
    tick(STAGE, "address-set", luminaire.name, addressWords(luminaire)),
    tick(STAGE, "loss-behaviour-set", luminaire.name, lossWords(luminaire)),
    labelCheck(luminaire, receivers, systems),
  ];
}

function receiverChecks(receiver: InstallReceiver, systems: readonly InstallSystem[]): InstallCheck[] {
  const { name, luminaires } = receiver;
  const words = `${name}: powered and listening before ${listed(luminaires)} goes beyond reach.`;
  return [linkCheck(receiver, systems), tick(STAGE, "listening-before-raise", name, words)];
}

function channelCheck(system: InstallSystem): InstallCheck {
  const { name } = system;
  return tick(STAGE, "channel-set", name, `Transmitter of ${name}: ${settingWords(system)}.`);
}

function addressWords({ name, universe, address, footprintSlotCount, mode }: InstallLuminaire): string {
  if (universe === null || address === null) return `${name}: no address yet. Patch it before it goes up.`;
  const slots = footprintSlotCount === null ? "" : `, ${footprintSlotCount} slots`;
  const inMode = mode === null ? "" : `, mode ${mode}`;
  return `${name}: universe ${universe}, DMX address ${address}${slots}${inMode}.`;
}

const LOSS_WORDS: Readonly<Record<InstallLuminaire["onLinkLoss"], string>> = {
  hold: "holds its last look",
  dark: "goes dark",
  preset: "goes to its stated look",
  full: "goes to full",
  unknown: "hold the last look or go to a stated one? Decide, set it and write it down",
};

function lossWords({ name, onLinkLoss }: InstallLuminaire): string {
  return `${name} on loss of data: ${LOSS_WORDS[onLinkLoss]}.`;
}

function labelCheck(
  { name }: InstallLuminaire,
  receivers: readonly InstallReceiver[],
  systems: readonly InstallSystem[],
): InstallCheck {
  const receiver = receivers.find(({ luminaires }) => luminaires.includes(name));
  const system = systems.find((one) => one.name === receiver?.system);
  const setting = settingWords(system ?? { channel: null, fallback: null }, "planned ");
  return tick(STAGE, "label-written", name, `Label of ${name}: ${setting}.`);
}

function linkCheck({ name, system }: InstallReceiver, systems: readonly InstallSystem[]): InstallCheck {
  const others = systems.filter((one) => one.name !== system).map((one) => one.name);
  const off = others.length === 0 ? "" : ` with the transmitters of ${others.join(", ")} off`;
  return {
    ...tick(STAGE, "linked-on-ground", name, `${name} linked to ${system} on the ground${off}.`),
    blanks: notes("linked"),
  };
}
