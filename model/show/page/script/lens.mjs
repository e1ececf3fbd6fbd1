/** The matrix by which a building is seen, and between which depths: what begins nearer keeps far depths less apart. */

import { across, place, tangent } from "./camera.mjs";
import { looking, parallel, perspective, times } from "./vector.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {import("./camera.mjs").Eye} Eye */
/** @typedef {{framed: [Vector, Vector], level: number, reach: number}} Stood a building's box, the level of the ground
 *   around it, and its diagonal, mm */

const LEAST = 20; // mm from the eye
const THIN = 3; // mm a pixel, from where on what is thin is seen
const SMALL = 12; // mm a pixel at what is nearest, from where on screws are seen
const ROOM = 0.9; // of the way to what is nearest

/** The matrix that shows the building. @param {Eye} eye @param {number} aspect @param {Stood} stood */
export function matrix(eye, aspect, stood) {
  const [, up] = across(eye);
  const far = eye.away + 40 * stood.reach;
  const half = eye.away * tangent(eye);
  const lens = eye.parallel
    ? parallel(half * aspect, half, eye.away - 4 * stood.reach, eye.away + 4 * stood.reach)
    : perspective(tangent(eye), aspect, near(eye, aspect, stood), far);
  return times(lens, looking(place(eye), eye.target, up));
}

/** mm before the eye from where on anything is seen: before the building and the ground at the foot of the picture. A sheet
 * of half a millimetre on a blanket is then told from it across a yard. @param {Eye} eye @param {number} aspect
 * @param {Stood} stood */
export function near(eye, aspect, { framed, level }) {
  const off = outside(eye, framed);
  if (!off) return Math.max(LEAST, Math.min(eye.away * 0.05, 400)); // among its pieces
  const steep = Math.sin(eye.rise) + tangent(eye) * Math.cos(eye.rise);
  const ground = steep > 0 ? (place(eye)[2] - level) / steep : Infinity;
  const corner = 1 / Math.hypot(1, tangent(eye), tangent(eye) * aspect); // what is off by so much lies less deep
  return Math.max(LEAST, ROOM * Math.min(off * corner, ground));
}

/** mm from the eye to a box, 0 among what is in it. @param {Eye} eye @param {[Vector, Vector]} box */
export function outside(eye, [low, high]) {
  return Math.hypot(...place(eye).map((value, k) => Math.max(low[k] - value, value - high[k], 0)));
}

/** What brings a point nearer by a thousandth of its distance, or in parallel by 15 mm, as depths are kept.
 * @param {Eye} eye @param {number} aspect @param {Stood} stood */
export function ahead(eye, aspect, stood) {
  return eye.parallel ? 15 / (4 * stood.reach) : 0.002 * near(eye, aspect, stood);
}

/** mm that a pixel is wide so far from the eye. @param {Eye} eye @param {number} height of the picture, pixels
 * @param {number} away */
function pixel(eye, height, away) {
  return (2 * away * tangent(eye)) / height;
}

/** @param {Eye} eye @param {number} height of the picture, pixels */
export function thinSeen(eye, height) {
  return pixel(eye, height, eye.away) < THIN;
}

/** @param {Eye} eye @param {number} height of the picture, pixels @param {Stood} stood */
export function smallSeen(eye, height, { framed }) {
  return pixel(eye, height, eye.parallel ? eye.away : outside(eye, framed)) < SMALL;
}
