/** What stands around a building: the ground, and a person of 1.75 m for its size. */

/** @typedef {import("./vector.mjs").Vector} Vector */

/** Two triangles. @param {Vector} centre @param {number} reach mm @param {number} level */
export function ground(centre, reach, level) {
  const [x, y] = centre;
  const corner = (/** @type {number} */ u, /** @type {number} */ v) => [x + u * reach, y + v * reach, level];
  const [a, b, c, d] = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
  return new Float32Array([a, b, c, a, c, d].flat());
}

const AROUND = 14;
/** Rings of a standing person: height and half widths, mm, around an axis beside the middle. */
const BODY = [
  [0, [760, 130, 80], [900, 165, 110], [1060, 140, 95], [1250, 190, 115], [1400, 215, 105], [1450, 150, 80], [1480, 60, 55]],
  [0, [1470, 50, 50], [1530, 55, 62], [1570, 72, 88], [1640, 80, 98], [1700, 70, 84], [1740, 38, 46], [1750, 4, 4]],
  [-95, [0, 48, 120], [70, 46, 90], [110, 42, 46], [400, 58, 62], [500, 60, 62], [800, 88, 90]],
  [95, [0, 48, 120], [70, 46, 90], [110, 42, 46], [400, 58, 62], [500, 60, 62], [800, 88, 90]],
  [-232, [760, 26, 34], [860, 38, 42], [1100, 42, 44], [1380, 50, 52], [1420, 30, 30]],
  [232, [760, 26, 34], [860, 38, 42], [1100, 42, 44], [1380, 50, 52], [1420, 30, 30]],
];

/** Triangles of a person who stands at a point. @param {Vector} at */
export function person(at) {
  /** @type {number[][]} */
  const found = [];
  for (const [aside, ...rings] of /** @type {[number, ...number[][]][]} */ (BODY)) {
    const spot = (/** @type {number[]} */ [z, w, d], /** @type {number} */ k) => {
      const turn = (2 * Math.PI * k) / AROUND;
      return [at[0] + aside + w * Math.cos(turn), at[1] + d * Math.sin(turn), at[2] + z];
    };
    for (let k = 0; k < AROUND; k++) {
      for (let ring = 1; ring < rings.length; ring++) {
        const [a, b] = [spot(rings[ring - 1], k), spot(rings[ring - 1], k + 1)];
        const [c, d] = [spot(rings[ring], k), spot(rings[ring], k + 1)];
        found.push(a, b, d, a, d, c);
      }
    }
  }
  return new Float32Array(found.flat());
}
