/** Where the eye stands: it turns around a target, and knows the named views. */

import { cross, dot, plus, unit } from "./vector.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {{target: Vector, turn: number, rise: number, away: number, parallel: boolean, wide: boolean}} Eye
 *   turn: radians around, 0 from the front, to the left; rise: radians above the level; away: mm */

const USUAL = Math.tan((34 * Math.PI) / 360);
const WIDE = Math.tan((75 * Math.PI) / 360); // a room needs a wide angle
const MARGIN = 1.08;
const EYE = 1650; // mm above the ground
const LOWEST = 250; // mm above the ground
const ALIKE = Math.asin(1 / Math.sqrt(3)); // from where a cube's three sides are alike
export const VIEWS = ["corner", "front", "left", "back", "right", "top", "inside"];
const TURNS = { corner: -0.66, front: 0, left: -Math.PI / 2, back: Math.PI, right: Math.PI / 2, top: 0, inside: 0 };

/** From the target toward the eye. @param {Eye} eye @returns {Vector} */
export function toward(eye) {
  const level = Math.cos(eye.rise);
  return [Math.sin(eye.turn) * level, -Math.cos(eye.turn) * level, Math.sin(eye.rise)];
}

/** @param {Eye} eye @returns {Vector} */
export function place(eye) {
  return plus(eye.target, toward(eye), eye.away);
}

/** To the right and up, as the eye has it. @param {Eye} eye @returns {[Vector, Vector]} */
export function across(eye) {
  const right = /** @type {Vector} */ ([Math.cos(eye.turn), Math.sin(eye.turn), 0]);
  return [right, cross(toward(eye), right)];
}

/** @param {Eye} eye */
export function tangent(eye) {
  return eye.wide ? WIDE : USUAL;
}

/** The ray behind a spot of the picture, -1 to 1 each way. @param {Eye} eye @param {number} aspect
 * @param {number} x @param {number} y @returns {{from: Vector, way: Vector}} */
export function ray(eye, aspect, x, y) {
  const [right, up] = across(eye);
  const half = tangent(eye) * eye.away;
  const spot = plus(plus(eye.target, right, x * half * aspect), up, y * half);
  const back = toward(eye);
  if (eye.parallel) return { from: plus(spot, back, eye.away * 4), way: plus([0, 0, 0], back, -1) };
  const from = place(eye);
  return { from, way: unit(plus(spot, from, -1)) };
}

/** A named view that holds the whole building. @param {string} name @param {[Vector, Vector]} box
 * @param {number} ground mm @param {number} aspect @param {boolean} level in parallel @returns {Eye} */
export function named(name, [low, high], ground, aspect, level) {
  const centre = /** @type {Vector} */ ([0, 1, 2].map((k) => (low[k] + high[k]) / 2));
  if (name === "inside") return inside([low, high], ground, level);
  /** @type {Eye} */
  const eye = { target: centre, turn: TURNS[/** @type {"corner"} */ (name)], rise: 0, away: 1, parallel: level, wide: false };
  if (name === "top") eye.rise = Math.PI / 2;
  else if (name === "corner" && level) eye.rise = ALIKE;
  for (let again = 0; again < 4; again++) {
    eye.away = held(eye, [low, high], aspect);
    if (name !== "top" && !level) eye.rise = Math.asin(Math.max(-0.9, Math.min(0.9, (ground + EYE - centre[2]) / eye.away)));
  }
  return eye;
}

/** How far away the eye must stand to see a box. @param {Eye} eye @param {[Vector, Vector]} box @param {number} aspect */
function held(eye, box, aspect) {
  const [right, up] = across(eye);
  const back = toward(eye);
  const high = tangent(eye) / MARGIN;
  let away = 1000;
  for (let corner = 0; corner < 8; corner++) {
    const p = /** @type {Vector} */ ([0, 1, 2].map((k) => box[(corner >> k) & 1][k]));
    const off = plus(p, eye.target, -1);
    const needed = Math.max(Math.abs(dot(off, right)) / (high * aspect), Math.abs(dot(off, up)) / high);
    away = Math.max(away, needed + (eye.parallel ? 0 : dot(off, back)));
  }
  return away;
}

/** A person in a front corner who looks along the room. @param {[Vector, Vector]} box @param {number} ground
 * @param {boolean} level @returns {Eye} */
function inside([low, high], ground, level) {
  const at = (/** @type {number} */ k, /** @type {number} */ share) => low[k] + share * (high[k] - low[k]);
  const eye = /** @type {Vector} */ ([at(0, 0.84), at(1, 0.07), Math.max(ground, 0) + EYE]);
  const target = /** @type {Vector} */ ([at(0, 0.35), at(1, 0.7), at(2, 0.5)]);
  const off = plus(eye, target, -1);
  const away = Math.hypot(...off);
  return { target, turn: Math.atan2(off[0], -off[1]), rise: Math.asin(off[2] / away), away, parallel: level, wide: true };
}

/** Turned by radians, above the ground. @param {Eye} eye @param {number} around @param {number} over @param {number} ground
 * @returns {Eye} */
export function turned(eye, around, over, ground) {
  const lowest = Math.asin(Math.max(-1, Math.min(1, (ground + LOWEST - eye.target[2]) / eye.away)));
  const rise = Math.min(Math.PI / 2, Math.max(eye.rise + over, eye.parallel ? 0 : lowest));
  return { ...eye, turn: eye.turn + around, rise };
}

/** Moved by shares of the picture's height. @param {Eye} eye @param {number} x @param {number} y @returns {Eye} */
export function moved(eye, x, y) {
  const [right, up] = across(eye);
  const whole = 2 * tangent(eye) * eye.away;
  return { ...eye, target: plus(plus(eye.target, right, x * whole), up, y * whole) };
}

/** Nearer or farther by a factor. @param {Eye} eye @param {number} factor @returns {Eye} */
export function nearer(eye, factor) {
  return { ...eye, away: Math.min(2e6, Math.max(150, eye.away * factor)) };
}

/** On the way from one to another. @param {Eye} one @param {Eye} other @param {number} share @returns {Eye} */
export function between(one, other, share) {
  const mix = (/** @type {number} */ a, /** @type {number} */ b) => a + share * (b - a);
  const around = Math.atan2(Math.sin(other.turn - one.turn), Math.cos(other.turn - one.turn));
  const target = /** @type {Vector} */ ([0, 1, 2].map((k) => mix(one.target[k], other.target[k])));
  return { ...other, target, turn: one.turn + share * around, rise: mix(one.rise, other.rise), away: mix(one.away, other.away) };
}
