/** What is said over the picture: findings, the tape, widths of laps, overhang and cover. */

import { length } from "./figures.mjs";
import { apart, middle } from "./vector.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {import("./data.mjs").Building} Building */
/** @typedef {import("./labels.mjs").Label} Label */

/** A pin for each finding that has a place. @param {Building} all
 * @param {(number: number, text: string, pieces: number[]) => void} found told which was pressed @returns {Label[]} */
export function pins({ findings }, found) {
  return findings.flatMap(({ at, fault, text, pieces }, number) =>
    at ? [{ at, text: fault ? "!" : "i", kind: fault ? "pin fault" : "pin", press: () => found(number, text, pieces) }] : [],
  );
}

/** The corners that the tape was put to, none to two. @param {Vector[]} corners @param {string} units @returns {Label[]} */
export function taped(corners, units) {
  const [one, other] = corners;
  if (!other) return corners.map((at) => ({ at, text: "•", kind: "tape" }));
  return [{ at: middle(one, other), text: length(apart(one, other), units), kind: "tape", ends: [one, other] }];
}

/** Widths of laps, overhang and cover. @param {Building} all @returns {Label[]} */
export function sizes(all) {
  const edges = all.edges.map(({ what, from, to, out, text }) => ({
    at: middle(from, to),
    text: `${what} ${text}`,
    kind: "size",
    out,
    ends: /** @type {[Vector, Vector]} */ ([from, to]),
  }));
  const laps = all.laps.map(({ corners: [a, , c], out, text }) => ({ at: middle(a, c), text, kind: "size", out }));
  return [...edges, ...laps];
}
