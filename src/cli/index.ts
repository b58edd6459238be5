export { main } from "./start.js";
export type { Io } from "./io.js";
