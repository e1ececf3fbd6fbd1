/** Laps as strips of colour, and their widths, overhang and cover as words. */

import { middle } from "./vector.mjs";

/** @typedef {import("./data.mjs").Building} Building */

/** The colour of a lap, by which of its two sheets is on top. */
export const TOPS = {
  left: [0.13, 0.47, 0.71],
  right: [0.9, 0.45, 0.1],
  higher: [0.2, 0.55, 0.3],
  lower: [0.8, 0.1, 0.2],
};

/** Triangles with a colour behind each point. @param {import("./data.mjs").Lap[]} laps */
export function strips(laps) {
  return new Float32Array(
    laps.flatMap(({ corners: [a, b, c, d], top }) =>
      [a, b, c, a, c, d].flatMap((point) => [...point, ...TOPS[top]]),
    ),
  );
}

/** @param {Building} all @returns {import("./labels.mjs").Label[]} */
export function words(all) {
  const edges = all.edges.map(({ what, from, to, out, text }) => ({
    at: middle(from, to),
    text: `${what} ${text}`,
    kind: "size",
    out,
    ends: /** @type {[import("./vector.mjs").Vector, import("./vector.mjs").Vector]} */ ([from, to]),
  }));
  const laps = all.laps.map(({ corners: [a, , c], out, text }) => ({ at: middle(a, c), text, kind: "size", out }));
  return [...edges, ...laps];
}
