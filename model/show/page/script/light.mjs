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

const AROUND = 2000; // mm beside a building within which it shuts out some of the sky

/** How a box that stands on the ground is seen from straight above: the matrix, its middle and half widths with what is
 * around it, and between which heights. @param {[Vector, Vector]} box @param {number} level */
export function overhead([low, high], level) {
  const [x, y] = [0, 1].map((k) => (low[k] + high[k]) / 2);
  const [wide, long] = [0, 1].map((k) => (high[k] - low[k]) / 2 + AROUND);
  const [top, deep] = [high[2] + 1, high[2] + 1 - level];
  const matrix = new Float32Array([1 / wide, 0, 0, 0, 0, 1 / long, 0, 0, 0, 0, -2 / deep, 0, -x / wide, -y / long, (top + level) / deep, 1]);
  return { matrix, plan: [x, y, wide, long], heights: [top, level] };
}
