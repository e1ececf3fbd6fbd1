/** Laps as strips of colour. */

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
