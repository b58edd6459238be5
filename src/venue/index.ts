export { planChannel } from "./plan-channel.js";
export type { ChannelPlan, PlannedChannel } from "./plan-channel.js";
export { planLink } from "./plan-link.js";
export type { LinkPlan } from "./plan-link.js";
export { receiverFrames } from "./receiver-frames.js";
export type { FrameTerms, ReceiverFrames } from "./receiver-frames.js";
export { DEFAULT_DISTANCES_M, referenceSetting } from "./reference-setting.js";
export type { PlanChannelOptions, ReferenceSetting } from "./reference-setting.js";
