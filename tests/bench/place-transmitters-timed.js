// A process of its own: times placeTransmitters on a seeded venue, prints { firstMs, medianMs, … } as JSON.
import { transmitShapes } from "stillband/band";
import { findProfile } from "stillband/radio";
import { placeTransmitters, referenceCrowd, venueSite } from "stillband/venue";
import { median, seeded } from "./statistics.js";

const [seed, receiverCount, callCount] = process.argv.slice(2).map(Number);
const SIDE_M = 50;
const STEP_M = 0.5;
const BUILDS = [
  { material: "brick", thicknessM: 0.2 },
  { material: "plasterboard", thicknessM: 0.0125 },
  { material: "concrete", thicknessM: 0.15 },
  { lossDb: 4 },
];

function square(fromM, toM) {
  return [
    { x: fromM, y: fromM },
    { x: toM, y: fromM },
    { x: toM, y: toM },
    { x: fromM, y: toM },
  ];
}

/** A hall of 50 m by 50 m with 24 walls in it, 500 people, and receivers hung all over it. */
function instance() {
  const random = seeded(seed);
  const walls = Array.from({ length: 24 }, (_, index) => {
    const [x, y, turn, lengthM] = [SIDE_M * random(), SIDE_M * random(), 6.28 * random(), 3 + 10 * random()];
    return {
      name: `wall ${index}`,
      storey: "ground",
      from: { x, y },
      to: { x: x + lengthM * Math.cos(turn), y: y + lengthM * Math.sin(turn) },
      bottomM: 0,
      topM: index % 2 === 0 ? null : 4,
      build: BUILDS[index % BUILDS.length],
      openings: [{ fromM: 1, toM: 2, bottomM: 0, topM: 2.1, build: { lossDb: 0 } }],
    };
  });
  const receivers = Array.from({ length: receiverCount }, (_, index) => ({
    name: `receiver ${index}`,
    system: "A",
    room: "hall",
    at: { x: 2 + 46 * random(), y: 2 + 46 * random(), z: 5 + 3 * random() },
    heightM: 6,
    antenna: { kind: "dipole" },
    enclosure: null,
    luminaires: [],
  }));
  const hall = {
    name: "hall",
    storey: "ground",
    outline: square(0, SIDE_M),
    heightM: 10,
    pathModel: null,
    places: [],
    people: { empty: 0, part: 200, full: 500 },
    seating: square(8, 42),
    handsetHeightM: 1.2,
  };
  const emitters = Array.from({ length: 40 }, (_, index) => {
    const channel = [1, 6, 11][index % 3];
    return {
      id: `source ${index}`,
      centreMhz: 2407 + 5 * channel,
      shape: transmitShapes.ht20,
      levelDbm: -90 + 35 * random(),
      airtimeRatio: 0.25,
      airtimeAssumed: true,
      contentionChannel: channel,
    };
  });
  const venue = {
    storeys: [{ name: "ground", floorM: 0, floorLossDb: null }],
    building: "commercial",
    rooms: [hall],
    walls,
    receivers,
    luminaires: [],
    emitters: [],
    crowd: referenceCrowd,
  };
  return { venue, survey: new Map([["hall", { emitters, scanHeightM: 1.2 }]]) };
}

const { venue, survey } = instance();
const system = {
  name: "A",
  rooms: ["hall"],
  profile: findProfile("raster-13"),
  transmitter: null,
  candidates: [],
  channel: 9,
  allowedChannels: null,
};

/** The venue is made ready anew each time, so that nothing is remembered. */
function timed() {
  const startedMs = performance.now();
  const placement = placeTransmitters(venueSite(venue), system, { survey, stepM: STEP_M });
  return { ms: performance.now() - startedMs, placement };
}

const first = timed();
const medianMs = median(Array.from({ length: callCount }, () => timed().ms));
const { triedCount, keptOutCount, ranked, pair } = first.placement;
console.log(
  JSON.stringify({
    firstMs: first.ms,
    medianMs,
    pointCount: triedCount + keptOutCount,
    rankedCount: ranked.length,
    hasPair: pair !== null,
  }),
);
