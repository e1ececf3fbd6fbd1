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
const LOOKED = 15000; // mm around what one looks at, within which their shanks are
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
  const away = outside(eye, framed);
  if (!away) return Math.max(LEAST, Math.min(eye.away * 0.05, 400)); // among its pieces
  const steep = Math.sin(eye.rise) + tangent(eye) * Math.cos(eye.rise);
  const ground = steep > 0 ? (place(eye)[2] - level) / steep : Infinity;
  const corner = 1 / Math.hypot(1, tangent(eye), tangent(eye) * aspect); // what is off by so much lies less deep
  return Math.max(LEAST, ROOM * Math.min(away * corner, ground));
}

/** mm from the eye to a box, 0 among what is in it. @param {Eye} eye @param {[Vector, Vector]} box */
export function outside(eye, box) {
  return off(place(eye), box);
}

/** mm from a point to a box. @param {Vector} from @param {[Vector, Vector]} box */
function off(from, [low, high]) {
  return Math.hypot(...from.map((value, k) => Math.max(low[k] - value, value - high[k], 0)));
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

/** Whether what is small would be seen in a box. @param {Eye} eye @param {number} height of the picture, pixels
 * @param {[Vector, Vector]} box */
export function smallSeen(eye, height, box) {
  return pixel(eye, height, eye.parallel ? eye.away : outside(eye, box)) < SMALL;
}

/** Whether the finest of what is small is looked at in a box: in parallel all is as large, however far. @param {Eye} eye
 * @param {[Vector, Vector]} box */
export function lookedAt(eye, box) {
  return off(eye.target, box) < LOOKED;
}

/** Whether any of a box may be in the picture: not all of its corners lie past one side of it.
 * @param {Float32Array} m the matrix that shows it @param {[Vector, Vector]} box */
export function inView(m, box) {
  const corners = Array.from({ length: 8 }, (_, corner) => {
    const [x, y, z] = [0, 1, 2].map((k) => box[(corner >> k) & 1][k]);
    return [0, 1, 2, 3].map((k) => m[k] * x + m[k + 4] * y + m[k + 8] * z + m[k + 12]);
  });
  return [0, 1, 2].every((k) => corners.some((p) => p[k] <= p[3]) && corners.some((p) => p[k] >= -p[3]));
}
