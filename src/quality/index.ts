export { frameLoss, frameLossRatio } from "./frame-loss.js";
export type { FrameLoss } from "./frame-loss.js";
export { transmissionSuccessRatio } from "./transmission-success.js";
export type { TransmissionTerms } from "./transmission-success.js";
