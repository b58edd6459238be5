declare const STILLBAND_VERSION: string;

/** The program's; set when the command line is bundled. */
export const VERSION = typeof STILLBAND_VERSION === "string" ? STILLBAND_VERSION : "0.0.0";
