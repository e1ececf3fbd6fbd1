/** Lines by which a door is known as one: the sections of an overhead door, the panels and the lever of a walk
 * door. They are drawn and are no part of the building. */

import { stand } from "./data.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {{points: Float32Array, owners: Float32Array, pairs: Uint32Array}} Lines */

const LEAF = "leaf"; // a role
const SECTION = 533; // mm, 21 in: of an overhead door
const PANEL = 900; // mm across
const OFF = 2; // mm before the leaf

/** @param {import("./data.mjs").Building} all @param {[Vector, Vector][]} boxes of its bodies @returns {Lines} */
export function doors(all, boxes) {
  /** @type {number[]} */
  const points = [];
  /** @type {number[]} */
  const owners = [];
  for (const piece of all.pieces.filter(({ role }) => role === LEAF)) {
    const { place, opening, number } = piece;
    const [low, high] = boxes[piece.mesh];
    const size = [0, 1, 2].map((axis) => high[axis] - low[axis]);
    const up = [place.x, place.y, place.z].reduce((best, { 2: z }, k, axes) => (Math.abs(z) > Math.abs(axes[best][2]) ? k : best), 0);
    const [thin, wide] = [0, 1, 2].filter((axis) => axis !== up).sort((a, b) => size[a] - size[b]);
    const marks = opening.includes("overhead") ? sections(size[wide], size[up]) : panels(size[wide], size[up]);
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
function sections(wide, high) {
  const rows = Math.max(1, Math.round(high / SECTION));
  const columns = Math.max(1, Math.round(wide / PANEL));
  /** @type {[number, number][]} */
  const found = [];
  for (let row = 0; row < rows; row++) {
    if (row) found.push([0, (row * high) / rows], [wide, (row * high) / rows]);
    for (let column = 0; column < columns; column++) {
      found.push(...frame((column * wide) / columns, (row * high) / rows, wide / columns, high / rows, 90));
    }
  }
  return found;
}

/** @param {number} wide @param {number} high */
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
