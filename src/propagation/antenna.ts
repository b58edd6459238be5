/**
 * How an antenna is fixed: `upright`, laid `sideways`, or `hanging` upside down. A rod's axis leans from
 * the vertical towards the azimuth by 0°, 90° or 180°, plus the tilt; a panel keeps facing its azimuth and
 * is rolled about that line by 0°, 90° or 180°. Every pattern here is symmetrical, so hanging gains and
 * polarises as upright does.
 */
export type Mounting = "upright" | "sideways" | "hanging";

/** Where an antenna points. Rooms are measured in x and y on the plan and z upwards. */
export interface AntennaMount {
  /** `upright` if not given. */
  readonly mounting?: Mounting | undefined;
  /** On the plan, from +x (0°) towards +y (90°); where a panel faces, where a rod leans. 0 if not given. */
  readonly azimuthDeg?: number | undefined;
  /** −90 … 90: how far a panel looks down, an upright rod leans, or a rod laid sideways dips. 0 if not given. */
  readonly tiltDeg?: number | undefined;
}

/** The same in every direction, 0 dBi; without a polarisation of its own. A reference, not a thing. */
export interface IsotropicAntenna extends AntennaMount {
  readonly kind: "isotropic";
}

/** A thin half-wave dipole, 2.15 dBi across its axis, nothing along it. */
export interface DipoleAntenna extends AntennaMount {
  readonly kind: "dipole";
}

/** A rod of elements fed in phase: even all round its axis, the flatter the more gain. */
export interface CollinearAntenna extends AntennaMount {
  readonly kind: "collinear";
  /** Peak, across the rod, 1.77 … 20 dBi: a shorter or lossy rod is a dipole with feeder loss. */
  readonly gainDbi: number;
}

/** A flat antenna with one beam and an even floor of side and back lobes. */
export interface PanelAntenna extends AntennaMount {
  readonly kind: "panel";
  /** Peak, dBi, as the data sheet says: losses within the antenna are in it. */
  readonly gainDbi: number;
  /** Between the half-power directions across the panel (left to right when upright), > 0, < 180. */
  readonly azimuthBeamwidthDeg: number;
  /** The same along the panel's own vertical. */
  readonly elevationBeamwidthDeg: number;
  /** Peak over the floor, 6 … 60 dB; 20 if not given (assumed). */
  readonly frontToBackDb?: number | undefined;
  /** `linear`, along the panel's own vertical, if not given. */
  readonly polarisation?: "linear" | "circular" | undefined;
}

/** An antenna and how it is fixed, as plain data. */
export type Antenna = IsotropicAntenna | DipoleAntenna | CollinearAntenna | PanelAntenna;
