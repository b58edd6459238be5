import { ArgumentError, requireFinite } from "../issues/index.js";

/** A direction (of any length) or a place in metres: x and y on the plan, z upwards. */
export interface Vector3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** @throws {ArgumentError} unless every coordinate is finite */
export function requireVector(argument: string, vector: Vector3): void {
  requireFinite(`${argument}.x`, vector.x);
  requireFinite(`${argument}.y`, vector.y);
  requireFinite(`${argument}.z`, vector.z);
}

/**
 * The vector at length 1.
 * @throws {ArgumentError} when a coordinate is not finite or all are 0
 */
export function unitVector(argument: string, vector: Vector3): Vector3 {
  requireVector(argument, vector);
  const { x, y, z } = vector;
  // Scaled first, so that no square overflows or vanishes.
  const largest = Math.max(Math.abs(x), Math.abs(y), Math.abs(z));
  if (largest === 0) throw new ArgumentError(argument, "a vector that is not all 0", "0, 0, 0");
  const length = Math.hypot(x / largest, y / largest, z / largest);
  return { x: x / largest / length, y: y / largest / length, z: z / largest / length };
}

/** @returns the vector from one place to another */
export function vectorFrom(from: Vector3, to: Vector3): Vector3 {
  return { x: to.x - from.x, y: to.y - from.y, z: to.z - from.z };
}

/** @returns the scalar product */
export function dot(a: Vector3, b: Vector3): number {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

/** @returns the vector product */
export function cross(a: Vector3, b: Vector3): Vector3 {
  return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}

/** @returns the vector's length */
export function lengthOf({ x, y, z }: Vector3): number {
  return Math.hypot(x, y, z);
}

/** Sine of an angle in degrees, exact at every quarter turn, so that an axis at 90° has a true null. */
export function sinOfDeg(angleDeg: number): number {
  const withinDeg = angleDeg % 360;
  if (withinDeg % 180 === 0) return 0;
  return Math.sin((withinDeg * Math.PI) / 180);
}

/** Cosine of an angle in degrees, exact at every quarter turn. */
export function cosOfDeg(angleDeg: number): number {
  return sinOfDeg((angleDeg % 360) + 90);
}
