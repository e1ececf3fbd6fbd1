/** Lines by which a door on hinges is known as one: its panels and its lever. They are drawn and are no part of the
 * building. A door that goes up shows its own sections or slats. */

import { stand } from "./data.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {{points: Float32Array, owners: Float32Array, pairs: Uint32Array}} Lines */

const LEAF = "leaf"; // a role
const HINGED = /walk door|double door/; // in the name of the opening
const OFF = 2; // mm before the leaf

/** @param {import("./data.mjs").Building} all @param {[Vector, Vector][]} boxes of its bodies @returns {Lines} */
export function doors(all, boxes) {
  /** @type {number[]} */
  const points = [];
  /** @type {number[]} */
  const owners = [];
  for (const piece of all.pieces.filter((one) => one.role === LEAF && HINGED.test(one.opening))) {
    const { place, number } = piece;
    const [low, high] = boxes[piece.mesh];
    const size = [0, 1, 2].map((axis) => high[axis] - low[axis]);
    const up = [place.x, place.y, place.z].reduce((best, { 2: z }, k, axes) => (Math.abs(z) > Math.abs(axes[best][2]) ? k : best), 0);
    const [thin, wide] = [0, 1, 2].filter((axis) => axis !== up).sort((a, b) => size[a] - size[b]);
    const marks = panels(size[wide], size[up]);
    const upward = [place.x, place.y, place.z][up][2] > 0;
    for (const side of [low[thin] - OFF, high[thin] + OFF]) {
      for (const [u, v] of marks) {
        const p = /** @type {Vector} */ ([0, 0, 0]);
        p[thin] = side;
        p[wide] = low[wide] + u;
        p[up] = upward ? low[up] + v : high[up] - v;
        points.push(...stand(place, p));
        owners.push(number);
      }
    }
  }
  const pairs = Uint32Array.from(owners, (_, k) => k);
  return { points: new Float32Array(points), owners: new Float32Array(owners), pairs };
}

/** Corners of lines, two by two. @param {number} wide @param {number} high @returns {[number, number][]} */
function panels(wide, high) {
  const [low, middle] = [0.1 * high, 0.48 * high];
  return [
    ...frame(0, low, wide, middle - low, 130),
    ...frame(0, middle, wide, high - middle - 30, 130),
    ...frame(wide - 150, 940, 120, 90, 30),
  ];
}

/** A rectangle, drawn in on all sides. @param {number} u @param {number} v @param {number} wide @param {number} high
 * @param {number} inset @returns {[number, number][]} */
function frame(u, v, wide, high, inset) {
  const [left, low, right, top] = [u + inset, v + inset, u + wide - inset, v + high - inset];
  if (right <= left || top <= low) return [];
  return [[left, low], [right, low], [right, low], [right, top], [right, top], [left, top], [left, top], [left, low]];
}
