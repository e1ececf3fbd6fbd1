/** What lies under a finger: the first body on a ray, by arithmetic. */

import { stand, unstand } from "./data.mjs";
import { apart, cross, dot, plus, uncut } from "./vector.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {import("./data.mjs").Building} Building */
/** @typedef {{piece: number, at: Vector, corner: Vector, away: number}} Hit corner: of the body, the nearest */

/** The first wanted piece on a ray that is not cut away. @param {Building} all @param {[Vector, Vector][]} boxed
 * @param {{from: Vector, way: Vector}} ray @param {(piece: number) => boolean} wanted @param {number[]} cut
 * @returns {Hit | null} */
export function hit(all, boxed, ray, wanted, cut) {
  /** @type {{piece: number, away: number, offset: Vector} | null} */
  let best = null;
  for (const piece of all.pieces) {
    if (!wanted(piece.number)) continue;
    const from = unstand(piece.place, ray.from);
    const way = unstand({ ...piece.place, origin: [0, 0, 0] }, ray.way);
    for (const offset of piece.row) {
      const start = plus(from, offset, -1);
      if (!crosses(boxed[piece.mesh], start, way, best ? best.away : Infinity)) continue;
      const away = nearest(all.meshes[piece.mesh], start, way, (t) => uncut(plus(ray.from, ray.way, t), cut));
      if (away !== null && (!best || away < best.away)) best = { piece: piece.number, away, offset };
    }
  }
  if (!best) return null;
  const at = plus(ray.from, ray.way, best.away);
  return { piece: best.piece, away: best.away, at, corner: corner(all, best, at) };
}

/** Whether a ray passes a box before some distance. @param {[Vector, Vector]} box @param {Vector} from
 * @param {Vector} way @param {number} before */
export function crosses([low, high], from, way, before) {
  let [enter, leave] = [0, before];
  for (let axis = 0; axis < 3; axis++) {
    const [a, b] = [(low[axis] - from[axis]) / way[axis], (high[axis] - from[axis]) / way[axis]];
    if (Number.isNaN(a) || Number.isNaN(b)) continue;
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  return enter <= leave;
}

/** How far the first triangle is that passes a test, null without one. @param {import("./data.mjs").Mesh} mesh
 * @param {Vector} from @param {Vector} way @param {(away: number) => boolean} passes */
function nearest({ points, faces }, from, way, passes) {
  let best = null;
  const point = (/** @type {number} */ k) => /** @type {Vector} */ ([points[3 * k], points[3 * k + 1], points[3 * k + 2]]);
  for (let k = 0; k < faces.length; k += 3) {
    const a = point(faces[k]);
    const u = plus(point(faces[k + 1]), a, -1);
    const v = plus(point(faces[k + 2]), a, -1);
    const p = cross(way, v);
    const size = dot(u, p);
    if (Math.abs(size) < 1e-9) continue;
    const off = plus(from, a, -1);
    const s = dot(off, p) / size;
    const q = cross(off, u);
    const t = dot(way, q) / size;
    if (s < 0 || t < 0 || s + t > 1) continue;
    const away = dot(v, q) / size;
    if (away > 0 && (best === null || away < best) && passes(away)) best = away;
  }
  return best;
}

/** The corner of a body that is nearest to a point. @param {Building} all
 * @param {{piece: number, offset: Vector}} body @param {Vector} at @returns {Vector} */
function corner(all, { piece, offset }, at) {
  const { place, mesh } = all.pieces[piece];
  const { points } = all.meshes[mesh];
  let best = at;
  for (let k = 0; k < points.length; k += 3) {
    const p = stand(place, [points[k] + offset[0], points[k + 1] + offset[1], points[k + 2] + offset[2]]);
    if (best === at || apart(p, at) < apart(best, at)) best = p;
  }
  return best;
}
