export { main } from "./main.js";
export type { Io } from "./io.js";
