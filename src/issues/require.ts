import { ArgumentError } from "./argument-error.js";

/** @throws {ArgumentError} unless `value` is a finite number. NaN never passes. */
export function requireFinite(argument: string, value: number): void {
  if (!Number.isFinite(value)) throw new ArgumentError(argument, "a finite number", value);
}

/** @throws {ArgumentError} unless `value` is finite and > 0. */
export function requirePositive(argument: string, value: number): void {
  if (!Number.isFinite(value) || value <= 0) throw new ArgumentError(argument, "a finite number > 0", value);
}

/** @throws {ArgumentError} unless `value` is finite and ≥ 0. */
export function requireNonNegative(argument: string, value: number): void {
  if (!Number.isFinite(value) || value < 0) throw new ArgumentError(argument, "a finite number ≥ 0", value);
}

/** @throws {ArgumentError} unless 0 ≤ `value` ≤ 1. */
export function requireRatio(argument: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new ArgumentError(argument, "a number from 0 to 1", value);
}

/** @throws {ArgumentError} unless `value` is a whole number from `least` to `most`. */
export function requireWhole(argument: string, value: number, least: number, most: number): void {
  if (!Number.isInteger(value) || value < least || value > most)
    throw new ArgumentError(argument, `a whole number from ${least} to ${most}`, value);
}
