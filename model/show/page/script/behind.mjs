/** Whether what is said of a place is said of something that is not seen from here. */

import { place, toward } from "./camera.mjs";
import { hit } from "./pick.mjs";
import { apart, plus, unit } from "./vector.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */

const RAYS = 60; // places a picture that are looked for
const TOUCHING = 250; // mm; what is so near to a place does not hide it

/** @param {import("./data.mjs").Building} all @param {[Vector, Vector][]} boxed @param {import("./camera.mjs").Eye} eye
 * @param {(piece: number) => boolean} hides @param {number[]} cut
 * @returns {(at: Vector) => boolean} whether a piece that hides stands between the eye and a place; no, once it was asked often */
export function behind(all, boxed, eye, hides, cut) {
  let rays = RAYS;
  return (at) => {
    if (rays-- <= 0) return false;
    const from = eye.parallel ? plus(at, toward(eye), 4 * eye.away) : place(eye);
    const found = hit(all, boxed, { from, way: unit(plus(at, from, -1)) }, hides, cut);
    return found !== null && found.away < apart(from, at) - TOUCHING;
  };
}
