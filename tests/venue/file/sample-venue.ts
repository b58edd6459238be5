/** A sound venue as plain data, small enough to spoil in one place at a time. */
export type Plain = Record<string, unknown>;
export type Spoil = (venue: Plain) => void;

export function sampleVenue(): Plain {
  return {
    name: "Tar House",
    units: "m",
    rooms: [
      {
        name: "hall",
        outline: [[0, 0], [20, 0], [20, 10], [0, 10]], // prettier-ignore
        height: 8,
        places: ["hall front"],
        people: 200,
      },
      { name: "foyer", outline: [[20, 0], [30, 0], [30, 10], [20, 10]], height: 4 }, // prettier-ignore
    ],
    walls: [
      {
        name: "middle",
        from: [20, 0],
        to: [20, 10],
        top: 6,
        material: "brick",
        thickness_mm: 215,
        openings: [{ from: 4, to: 6, top: 2.2, material: "wood", thickness_mm: 40 }],
      },
    ],
    systems: [
      {
        name: "main",
        rooms: ["hall"],
        profile: "raster-13",
        universe: 1,
        transmitter: { at: [1, 5], height: 3 },
      },
      { name: "front", rooms: ["foyer"], universe: 2, candidates: [{ at: [21, 1], height: 3 }] },
    ],
    luminaires: [
      {
        name: "H1",
        room: "hall",
        x: 5,
        y: 5,
        ceiling_height: 7.5,
        trim_height: 5,
        footprint: 8,
        address: 1,
        universe: 1,
      },
      { name: "H2", room: "hall", x: 10, y: 5, ceiling_height: 8, trim_height: 5, receiver: "box" },
      { name: "H3", room: "hall", x: 12, y: 5, trim_height: 5 },
      { name: "F1", room: "foyer", x: 25, y: 5 },
    ],
    receivers: [{ name: "box", luminaires: ["H3"] }],
    emitters: [{ name: "oven", type: "microwave-oven", at: [28, 2], height: 1 }],
    scans: [{ file: "a.csv", place: "hall front", crowd: "full" }],
    sources: [{ source: "Tar Guest", owner: "building" }],
    crowd: { carried_ratio: 0.5 },
  };
}

/** What stands at a path such as `rooms[1].outline`, or holds it: the holder and the last key. */
function holderOf(venue: Plain, path: string): readonly [holder: Plain, key: string] {
  const keys = path.split(/[.[\]]+/).filter((key) => key !== "");
  const last = keys.pop()!;
  return [keys.reduce((holder, key) => holder[key] as Plain, venue), last];
}

/** Puts a value at a path. */
export function set(path: string, value: unknown): Spoil {
  return (venue) => {
    const [holder, key] = holderOf(venue, path);
    holder[key] = value;
  };
}

/** Takes a key away. */
export function drop(path: string): Spoil {
  return (venue) => {
    const [holder, key] = holderOf(venue, path);
    delete holder[key];
  };
}

/** Adds items to a list. */
export function add(path: string, ...items: readonly unknown[]): Spoil {
  return (venue) => {
    const [holder, key] = holderOf(venue, path);
    (holder[key] as unknown[]).push(...items);
  };
}

/** Cuts a list after so many items. */
export function cut(path: string, leftCount: number): Spoil {
  return (venue) => {
    const [holder, key] = holderOf(venue, path);
    holder[key] = (holder[key] as unknown[]).slice(0, leftCount);
  };
}

/** One after the other. */
export function all(...spoils: readonly Spoil[]): Spoil {
  return (venue) => {
    for (const spoil of spoils) spoil(venue);
  };
}
