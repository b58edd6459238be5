export type { Picture } from "./picture.js";
export { planPage } from "./plan-page.js";
export { planPictures } from "./svg/plan-pictures.js";
export { standaloneSvg } from "./svg/standalone-svg.js";
