/** The room that a building takes: its bodies' boxes, its own, the ground under it, a person beside it. */

import { bounds, boxes } from "./mesh.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {{boxed: [Vector, Vector][], box: [Vector, Vector], level: number, beside: Vector,
 *   framed: [Vector, Vector], hall: [Vector, Vector]}} Room boxed: each body in its own frame; level: of the ground; beside:
 *   where a person stands; framed: what a picture of the whole has to hold; hall: the building's box without its lean-tos */

const ASIDE = 1000; // mm from the building to a person
const BELOW = 120; // mm of a slab that stands out of the ground

/** @param {import("./data.mjs").Building} all @returns {Room} */
export function room(all) {
  const [low, high] = bounds(all, () => true);
  const hall = bounds(all, ({ name, role }) => role !== "slab" && !/\blean-to\b/.test(name));
  const level = Math.max(low[2], -BELOW);
  const beside = /** @type {Vector} */ ([high[0] + ASIDE, low[1] - ASIDE / 3, level]);
  return { boxed: boxes(all), box: [low, high], hall: hall[0][0] < hall[1][0] ? hall : [low, high], level, beside, framed: [low, [beside[0] + 300, high[1], high[2]]] };
}
