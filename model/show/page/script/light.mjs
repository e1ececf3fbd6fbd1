/** One sun, from the front left and high enough that both walls of the opening view stand in it. */

import { dot, looking, parallel, plus, times, unit } from "./vector.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */

/** Toward the sun. @type {Vector} */
export const SUN = unit([-0.62, -0.78, 0.72]);

/** The matrix by which the sun sees a box that stands on the ground. @param {[Vector, Vector]} box @param {number} level */
export function sunward([low, high], level) {
  const centre = /** @type {Vector} */ ([0, 1, 2].map((k) => (low[k] + high[k]) / 2));
  const view = looking(plus(centre, SUN, 1), centre, [0, 0, 1]);
  const right = /** @type {Vector} */ ([view[0], view[4], view[8]]);
  const up = /** @type {Vector} */ ([view[1], view[5], view[9]]);
  let [wide, tall, deep] = [0, 0, 0];
  for (let corner = 0; corner < 8; corner++) {
    const p = /** @type {Vector} */ ([0, 1, 2].map((k) => [low, high][(corner >> k) & 1][k]));
    const off = plus([p[0], p[1], Math.min(p[2], corner & 4 ? p[2] : level)], centre, -1);
    wide = Math.max(wide, Math.abs(dot(off, right)));
    tall = Math.max(tall, Math.abs(dot(off, up)));
    deep = Math.max(deep, Math.abs(dot(off, SUN)));
  }
  deep = 2.5 * deep + 3000; // with the ground that shadows fall on
  return times(parallel(wide * 1.02, tall * 1.02, -deep, deep), view);
}
