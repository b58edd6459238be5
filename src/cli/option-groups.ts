import { buildingLosses } from "../propagation/index.js";
import { builtInProfiles, enclosureLosses, regionRules } from "../radio/index.js";
import { CROWDS } from "../scan/index.js";

/** What a shell may offer in the place of a value: the words that are known, and whether a file's name will do. */
export interface Offer {
  readonly words?: readonly string[];
  readonly files?: true;
}

/** Flags, then what they mean; `...` in a flag: may be given several times, one value each. */
export type Option = readonly [flags: string, meaning: string, offer?: Offer | undefined];

export const FILES: Offer = { files: true };
export const CROWD_WORDS: Offer = { words: CROWDS };
export const REGION_WORDS: Offer = { words: Object.keys(regionRules) };
export const PROFILE_WORDS: Offer = { words: builtInProfiles.map(({ name }) => name), files: true };

/** The option groups of the commands: flags, then what they mean. */
export const COMMON: readonly Option[] = [
  ["--json", "print one JSON value"],
  ["--units <unit>", "m or ft (default m; ft with --region US)", { words: ["m", "ft"] }],
  ["-o, --output <file>", "write to a file, whole or not at all", FILES],
  ["--quiet", "no notes, errors only"],
  ["--no-color", "no bold or faint text"],
];

export const SCANS: readonly Option[] = [
  ["--place <name>", "place of the scans named after it"],
  ["--crowd <word>", "empty, part or full, in the scans named after it", CROWD_WORDS],
  ["--time <iso>", "time of the scans named after it, in ISO 8601"],
  ["--map <field=header...>", 'which column of a foreign table holds a field, as ssid="Name"'],
  ["--strict", "a rejected row is an error (exit 65)"],
];

export const SURVEY: readonly Option[] = [
  ["--ignore <source...>", "a name or address of the crew's own, left out"],
  ["--building-wifi <source...>", "a name or address of the building's own (else: -75 dBm or more)"],
  ["--neighbour-wifi <source...>", "a name or address that isn't the building's"],
  ["--level-quantile <q>", "of a source's readings at a place (default 0.9)"],
  ["--assume-airtime <e,p,f>", "where none is reported: empty,part,full (0.1,0.25,0.5)"],
  ["--rbw-khz <width>", "resolution bandwidth of power sweeps (default a bin's width)"],
];

export const RADIO: readonly Option[] = [
  ["--profile <name-or-file>", "built in or your own (default raster-13)", PROFILE_WORDS],
  ["--set <figure=value...>", "one figure of the profile, as tx_power_dbm=10"],
  [
    "--enclosure <word>",
    "antenna-outside, plastic-or-glass, slotted-metal, closed-metal",
    { words: Object.keys(enclosureLosses) },
  ],
  ["--region <code>", "US, CA, EU, GB, AU, NZ, JP or world: power and band edges", REGION_WORDS],
];

export const LINK: readonly Option[] = [
  ["--distance <length>", "the reference receiver (default 20m)"],
  ["--distances <list>", "rows of the link table, as 5,10,20m"],
  [
    "--path-model <model>",
    "free-space, indoor:N, indoor-abg:PLACE:SIGHT, log-distance:EXP:DB[:SIGMA] or a file (default indoor:22)",
    { words: ["free-space"], files: true },
  ],
  ["--fade <law>", "rician:K, rayleigh, lognormal:S, rayleigh-lognormal:S (rician:6)"],
  ["--reliability <share>", "share of receiver positions to hold (default 0.99)"],
  ["--receivers <count>", "how many receivers the job has: the chance that all hold"],
  ["--reliability-all <share>", "chance that all hold; sets --reliability, needs --receivers"],
  ["--busy-share <share>", "share of time that may be worse (default 0.01)"],
  ["--burst-ms <ms>", "length of a Wi-Fi burst (default 2)"],
  ["--event-minutes <minutes>", "length of the event whose look is told (default 90)"],
];

export const SITE: readonly Option[] = [
  [
    "--tx-antenna <word>",
    "isotropic, dipole, collinear:DBI, panel:DBI:AZ:EL; then ,hanging ,sideways ,tilt=DEG ,azimuth=DEG",
  ],
  ["--rx-antenna <word>", "the same at the receiver; azimuth 0 looks at the other end"],
  ["--tx-height <length>", "above the floor; distances then run along the floor"],
  ["--rx-height <length>", "above the floor; both heights or neither"],
  ["--wall <word...>", "in the path: concrete:200mm, layers with +, or 6dB; @45 off square"],
  ["--floors <count>", "floors between the ends, by ITU-R P.1238 (default 0)"],
  [
    "--building <word>",
    "residential, office or commercial (default commercial)",
    { words: Object.keys(buildingLosses) },
  ],
];

export const WIFI: readonly Option[] = [
  ["--ap-power-dbm <dbm>", "an access point's power at its connector (default 18, assumed)"],
];

/** What people bring to a venue, in place of what its file says. */
export const CROWD: readonly Option[] = [
  ["--carried-share <count>", "handsets switched on, a head (default 0.8, assumed)"],
  ["--on-air-share <share>", "of time, of one of them at 2.4 GHz (default 0.001, assumed)"],
  ["--handset-dbm <dbm>", "EIRP of a handset (default 15, assumed)"],
  ["--body-loss-db <db>", "of a path through the audience (default 6, assumed)"],
  ["--scan-height-gain-db <db>", "what a scan from the floor misses at trim height (default 6, assumed)"],
];

/** What every command that plans a venue takes. */
export const VENUE: readonly Option[] = [
  ["--crowd <word>", "empty, part or full: who is in (default full)", CROWD_WORDS],
  ...SURVEY.filter(([flags]) => /--(?:ignore|level|assume|rbw)/.test(flags)),
  ...RADIO.filter(([flags]) => flags.startsWith("--region")),
  ...LINK.filter(([flags]) => /--(?:busy-share|reliability <|fade)/.test(flags)),
  ...CROWD,
];
