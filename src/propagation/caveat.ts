/**
 * What a path loss was stretched beyond. The loss stands as computed; nothing is clamped.
 * - `near-field`: closer than three wavelengths (0.37 m at 2450 MHz)
 * - `below-reference-distance`: closer than the model's reference distance (1 m)
 * - `beyond-fitted-distance`: further than 100 m
 * - `below-free-space`: the model gives less loss than free space
 * - `outside-model-range`: a distance or frequency that the model was not fitted over
 */
export type Caveat =
  | "near-field"
  | "below-reference-distance"
  | "beyond-fitted-distance"
  | "below-free-space"
  | "outside-model-range";

/** Distances and reaches beyond this, m, lie outside the indoor measurements that the models rest on. */
export const FITTED_UP_TO_M = 100;
