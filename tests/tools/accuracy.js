// How far each formula is from the outside tables of fixtures/reference: the greatest deviation over all rows,
// as README's accuracy section shows it between its marks. Needs a build.
// Usage: node tests/tools/accuracy.js   (rewrites README.md)
import { parse } from "csv-parse/sync";
import { readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";

const PROJECT = resolve(import.meta.dirname, "../..");
const REFERENCE = join(PROJECT, "fixtures/reference");
const room = (name) => import(pathToFileURL(join(PROJECT, `dist/${name}/index.js`)).href);

const csv = (name) => parse(readFileSync(join(REFERENCE, `${name}.csv`), "utf8"), { columns: true });

/** Names of overlap.csv, and the transmit shape that is meant; half of the band that is flat in both, MHz. */
const SIMULATED = {
  dsss: ["dsss22", 10],
  ofdm20: ["erpOfdm20", 8],
  ht20_floor45: ["ht20", 8],
  ht40_floor45: ["ht40", 17],
  he20: ["he20", 9],
};

/** @returns one entry a comparison: each row's deviation, absolute in `unit` or relative where that is "relative" */
export async function comparisons() {
  const [propagation, band, numeric] = await Promise.all(["propagation", "band", "numeric"].map(room));
  const [quality, commissioning, venue, install] = await Promise.all(
    ["quality", "commissioning", "venue", "install"].map(room),
  );
  return [
    ...pathLosses(propagation),
    ...spectra(band),
    ...fades(propagation),
    ...runs(quality),
    ...mathematics(numeric),
    ...fits(commissioning),
    ...assignments(venue),
    ...wires(install),
  ];
}

function pathLosses({
  freeSpacePathLossDb,
  indoorModelOf,
  pathLossDb,
  logDistancePathLossDb,
  slabTransmissionLossDb,
}) {
  const slabs = csv("p2040").filter((row) => row.slab_loss_db_2450 !== "");
  return [
    compared("free space, ITU-R P.525", "ns-3 3.37", "dB", csv("friis"), (row) => [
      freeSpacePathLossDb(+row.distance_m, +row.freq_mhz),
      +row.loss_db,
    ]),
    compared("indoor, ITU-R P.1238, 0 to 3 floors", "ns-3 3.37", "dB", csv("itu1238"), (row) => [
      pathLossDb(indoorModelOf(row.building, +row.floors), {
        distanceM: +row.distance_m,
        frequencyMhz: +row.freq_mhz,
      }),
      +row.loss_db,
    ]),
    compared("log-distance", "ns-3 3.37", "dB", csv("logdistance"), (row) => [
      logDistancePathLossDb({
        distanceM: +row.distance_m,
        exponent: +row.exponent,
        referenceLossDb: +row.ref_loss_db,
        referenceDistanceM: +row.ref_distance_m,
      }),
      +row.loss_db,
    ]),
    compared("wall slab, ITU-R P.2040", "published coefficients, two decimals", "dB", slabs, (row) => [
      slabTransmissionLossDb({
        material: { a: +row.a, b: +row.b, c: +row.c, d: +row.d },
        thicknessM: +row.thickness_m,
        frequencyMhz: 2450,
      }),
      +row.slab_loss_db_2450,
    ]),
  ];
}

/**
 * Inside the flat part of both and beside the simulator's null carriers; in the skirts its spectra are its own, as
 * tests/band/spectral-overlap.test.ts accounts for.
 */
function spectra({ brickWall, spectralOverlapDb, transmitShapes }) {
  const flat = csv("overlap").filter(({ shape, victim_bw_mhz, offset_mhz }) => {
    const apartMhz = Math.abs(+offset_mhz);
    const isOverNull = shape !== "dsss" && (apartMhz < 2 || (shape.startsWith("ht40") && apartMhz === 10));
    return victim_bw_mhz === "1" && !isOverNull && apartMhz + 0.5 <= SIMULATED[shape][1];
  });
  return [
    compared(
      "overlap of 1 MHz within the occupied band",
      "ns-3 3.37, beside its null carriers; its skirts hold less power",
      "dB",
      flat,
      (row) => [
        spectralOverlapDb(transmitShapes[SIMULATED[row.shape][0]], brickWall(1), +row.offset_mhz),
        +row.fraction_db,
      ],
    ),
  ];
}

function fades({ fadeOutageRatio, fadeMarginDb }) {
  const fadeOf = ({ law, k_db_or_sigma_db: figure }) => {
    const name = law.replace("_", "-");
    return name === "rician" ? { law: name, kDb: +figure } : { law: name, sigmaDb: +figure };
  };
  const rows = csv("rayleigh_lognormal");
  return [
    compared("fade outage, four laws", "SciPy and mpmath", "relative", rows, (row) => [
      fadeOutageRatio({ ...fadeOf(row), marginDb: +row.margin_db }),
      +row.outage,
    ]),
    compared("fade allowance, four laws", "SciPy and mpmath", "dB", rows, (row) => [
      fadeMarginDb({ ...fadeOf(row), outageRatio: +row.outage }),
      +row.margin_db,
    ]),
  ];
}

function runs({ longestRunProbability }) {
  const rows = [...csv("longest_run"), ...csv("longest_run_long")];
  return [
    compared("chance of a hold", "80-digit arithmetic", "relative", rows, (row) => [
      longestRunProbability({ trials: +row.n, runLength: +row.k, failureProbability: +row.p_fail }),
      +row.prob_run_ge_k,
    ]),
  ];
}

function mathematics({ normalTail, normalTailQuantile, poissonMass, noncentralChiSquareCdf, ...numeric }) {
  const functions = {
    normal_tail: normalTail,
    normal_tail_quantile: normalTailQuantile,
    poisson_mass: poissonMass,
    noncentral_chi_square_cdf: noncentralChiSquareCdf,
  };
  // NIST StRD Norris: the certified parameters.
  const certified = [-0.262323073774029, 1.00211681802045];
  const norris = csv("norris");
  const { coefficients } = numeric.leastSquares(
    norris.map(({ x }) => [1, +x]),
    norris.map(({ y }) => +y),
  );
  return [
    compared("special functions", "mpmath at 45 digits", "relative", csv("special_functions"), (row) => [
      functions[row.function](+row.argument, +row.parameter),
      +row.value,
    ]),
    compared("Student's t, its tail", "mpmath at 40 digits", "absolute", csv("student_t"), (row) => [
      numeric.studentTTail(+row.quantile, +row.freedom),
      +row.tail,
    ]),
    compared("least squares", "NIST StRD, Norris, certified", "relative", certified, (value, index) => [
      coefficients[index],
      value,
    ]),
  ];
}

function fits({ fitPathLoss }) {
  const walks = csv("censored_walks");
  const cases = csv("censored_fits").flatMap((reference) => {
    const own = walks.filter((row) => row.case === reference.case);
    const fit = fitPathLoss({
      distanceM: own.map((row) => +row.distance_m),
      lossDb: own.map((row) => +row.loss_db),
      censored: own.map((row) => row.censored === "1"),
      ...(reference.wall_loss_db !== "" && { wallCount: own.map((row) => +row.walls) }),
    });
    return [
      [fit.exponent, +reference.exponent],
      [fit.referenceLossDb, +reference.reference_loss_db],
    ];
  });
  return [
    compared("path-model fit, readings not heard", "SciPy and mpmath", "relative", cases, (pair) => pair),
  ];
}

function assignments({ assignChannels }) {
  const { instances } = JSON.parse(readFileSync(join(REFERENCE, "channel_assignment.json"), "utf8"));
  return [
    compared("joint channels, smallest margin", "brute force, outside", "dB", instances, (one) => [
      assignChannels({
        wantedDbm: one.wanted_dbm,
        requiredCiDb: one.required_ci_db,
        baseMw: one.base_mw,
        couplingMw: one.coupling_mw,
        overlap: one.overlap,
      }).minMarginDb,
      one.optimum.value_db,
    ]),
  ];
}

function wires({ awgDiameterMm }) {
  const rows = csv("awg").filter(({ quantity }) => quantity === "diameter");
  return [
    compared("wire diameter", "ASTM B258, four decimals", "mm", rows, (row) => [
      awgDiameterMm(+row.awg),
      +row.value,
    ]),
  ];
}

/** @returns the greatest deviation over all rows; NaN where any of them is none */
function compared(formula, check, unit, rows, pairOf) {
  const deviations = rows.map((row, index) => {
    const [own, expected] = pairOf(row, index);
    return unit === "relative" ? Math.abs(own / expected - 1) : Math.abs(own - expected);
  });
  return {
    formula,
    check,
    unit,
    rowCount: rows.length,
    greatest: deviations.reduce((a, b) => (a >= b ? a : b), 0),
  };
}

/** @returns README's block: a table in Markdown, between its marks */
export function accuracyBlock(rows) {
  const lines = rows.map(
    ({ formula, check, unit, rowCount, greatest }) =>
      `| ${formula} | ${check} | ${rowCount} | ${deviationText(greatest, unit)} |`,
  );
  const head = ["| formula | checked against | values | greatest deviation |", "| --- | --- | --- | --- |"];
  return `<!-- accuracy -->\n\n${[...head, ...lines].join("\n")}\n\n<!-- /accuracy -->`;
}

/**
 * One digit, rounded up: below 1e-12 it is the rounding of the arithmetic, and differs from one machine to another.
 */
function deviationText(greatest, unit) {
  if (!Number.isFinite(greatest)) return "not a number";
  const words = unit === "absolute" || unit === "relative" ? "" : ` ${unit}`;
  const kind = unit === "relative" ? ", of the value" : "";
  if (greatest < 1e-12) return `below 1e-12${words}${kind}`;
  const below = Math.floor(Math.log10(greatest));
  const up = Math.ceil(greatest / 10 ** below - 1e-9);
  const [digit, power] = up === 10 ? [1, below + 1] : [up, below];
  const text = power >= -3 ? (digit * 10 ** power).toFixed(-Math.min(0, power)) : `${digit}e${power}`;
  return `${text}${words}${kind}`;
}

/** The README with its block as computed. */
export async function withAccuracy(readme) {
  const block = accuracyBlock(await comparisons());
  if (!/<!-- accuracy -->[\s\S]*<!-- \/accuracy -->/.test(readme))
    throw new Error("README.md has no accuracy marks");
  return readme.replace(/<!-- accuracy -->[\s\S]*<!-- \/accuracy -->/, () => block);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const path = join(PROJECT, "README.md");
  writeFileSync(path, await withAccuracy(readFileSync(path, "utf8")));
}
