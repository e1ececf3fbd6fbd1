/** Bodies as the graphics take them: one merged mesh of all that stands once. */

import { stand } from "./data.mjs";
import { apart, cross, plus } from "./vector.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {import("./data.mjs").Building} Building */
/** @typedef {import("./data.mjs").Mesh} Mesh */
/** @typedef {{points: Float32Array, owners: Float32Array, faces: Uint32Array, sharp: Uint32Array,
 *   blunt: Uint32Array, layers: number[], broad: number, rims: number}} Merged layers: where each of LAYERS ends in faces,
 *   what hides the rest first, then panes; broad: where thin triangles begin, which come last; rims: where those of panes do */

export const GLASS = new Set(["pane", "wall light sheet", "roof light sheet"]); // roles
export const LIT = 2; // the bit of a piece's look that says it is
/** What lies on what, from outside in; the last of them begins with panes. */
export const LAYERS = ["trims and doors", "sheets", "all behind them", "panes"];
const THIN = 2; // mm; a sheet's edge is, a small rib's flank is not
const BEND = Math.cos((22 * Math.PI) / 180); // less is a facet of something round
const EDGE = Math.cos((75 * Math.PI) / 180); // from here on it is an edge, below it a bend such as a rib's

/** The sides at which a closed body's surface drawn, as pairs of its points.
 * @param {Mesh} mesh @returns {{sharp: number[], blunt: number[]}} */
export function creases(mesh) {
  const { points, faces } = mesh;
  const size = points.length / 3;
  const sharp = [];
  const blunt = [];
  /** @type {Map<number, number>} */
  const open = new Map();
  const normals = facing(mesh);
  for (let k = 0; k < faces.length; k++) {
    const face = k - (k % 3);
    const a = faces[k];
    const b = faces[face + ((k + 1) % 3)];
    const key = Math.min(a, b) * size + Math.max(a, b);
    const other = open.get(key);
    if (other === undefined) {
      open.set(key, face);
      continue;
    }
    open.delete(key);
    const turn =
      normals[face] * normals[other] + normals[face + 1] * normals[other + 1] + normals[face + 2] * normals[other + 2];
    if (turn <= EDGE) sharp.push(a, b);
    else if (turn <= BEND) blunt.push(a, b);
  }
  return { sharp, blunt };
}

/** The corners of a body's triangles, those apart that are too thin to be seen from afar, such as along the edge
 * of a sheet: some graphics give them a depth that is none. @param {Mesh} mesh */
export function sorted({ points, faces }) {
  const point = (/** @type {number} */ k) => /** @type {Vector} */ ([points[3 * k], points[3 * k + 1], points[3 * k + 2]]);
  /** @type {{faces: number[], thin: number[]}} */
  const found = { faces: [], thin: [] };
  for (let k = 0; k < faces.length; k += 3) {
    const [a, b, c] = [point(faces[k]), point(faces[k + 1]), point(faces[k + 2])];
    const longest = Math.max(apart(a, b), apart(b, c), apart(c, a));
    const area = Math.hypot(...cross(plus(b, a, -1), plus(c, a, -1)));
    (area > THIN * longest ? found.faces : found.thin).push(faces[k], faces[k + 1], faces[k + 2]);
  }
  return found;
}

/** The unit vector that each triangle faces, three numbers each. @param {Mesh} mesh */
function facing({ points, faces }) {
  const found = new Float32Array(faces.length);
  for (let k = 0; k < faces.length; k += 3) {
    const [a, b, c] = [3 * faces[k], 3 * faces[k + 1], 3 * faces[k + 2]];
    const u = [0, 1, 2].map((axis) => points[b + axis] - points[a + axis]);
    const v = [0, 1, 2].map((axis) => points[c + axis] - points[a + axis]);
    const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    const size = Math.hypot(...n) || 1;
    for (let axis = 0; axis < 3; axis++) found[k + axis] = n[axis] / size;
  }
  return found;
}

/** What was worked out of meshes, as long as any building has them.
 * @type {WeakMap<Mesh, {faces: number[], thin: number[], sharp: number[], blunt: number[]}>} */
const known = new WeakMap();

/** The number of a piece's layer. @param {Building} all @param {import("./data.mjs").Piece} piece */
function layer({ groups, skin }, { role, group, opening }) {
  if (GLASS.has(role)) return 3;
  if (opening || groups[group] === "Trims") return 0;
  return skin.includes(group) && role.endsWith("sheet") ? 1 : 2;
}

/** All pieces that stand once as one mesh in the building's axes. @param {Building} all @returns {Merged} */
export function merged(all) {
  const layers = new Map(all.pieces.map((piece) => [piece, layer(all, piece)]));
  const late = (/** @type {import("./data.mjs").Piece} */ piece) => /** @type {number} */ (layers.get(piece));
  const single = all.pieces.filter((piece) => piece.row.length === 1);
  single.sort((a, b) => late(a) - late(b)); // what hides the rest comes first
  const drawn = (/** @type {number} */ number) => {
    const mesh = all.meshes[number];
    const one = known.get(mesh) ?? { ...sorted(mesh), ...creases(mesh) };
    known.set(mesh, one);
    return one;
  };
  const sum = (/** @type {(mesh: number) => number} */ of) => single.reduce((so, { mesh }) => so + of(mesh), 0);
  const size = sum((mesh) => all.meshes[mesh].points.length);
  const found = {
    points: new Float32Array(size),
    owners: new Float32Array(size / 3),
    faces: new Uint32Array(sum((mesh) => drawn(mesh).faces.length + drawn(mesh).thin.length)),
    broad: sum((mesh) => drawn(mesh).faces.length),
    rims: 0,
    sharp: new Uint32Array(sum((mesh) => drawn(mesh).sharp.length)),
    blunt: new Uint32Array(sum((mesh) => drawn(mesh).blunt.length)),
    layers: LAYERS.map(() => 0),
  };
  const at = { point: 0, faces: 0, thin: found.broad, sharp: 0, blunt: 0 };
  const into = { ...found, thin: found.faces };
  for (const piece of single) {
    found.layers.fill(at.faces + drawn(piece.mesh).faces.length, late(piece));
    if (!GLASS.has(piece.role)) found.rims = at.thin + drawn(piece.mesh).thin.length;
    const { points } = all.meshes[piece.mesh];
    for (const [key, corners] of Object.entries(drawn(piece.mesh))) {
      const name = /** @type {"faces" | "thin" | "sharp" | "blunt"} */ (key);
      for (const corner of corners) into[name][at[name]++] = corner + at.point;
    }
    for (let k = 0; k < points.length; k += 3, at.point++) {
      const p = stand(piece.place, [points[k] + piece.row[0][0], points[k + 1] + piece.row[0][1], points[k + 2] + piece.row[0][2]]);
      found.points.set(p, 3 * at.point);
      found.owners[at.point] = piece.number;
    }
  }
  return found;
}

/** Lowest and highest corner of some bodies where they stand. @param {Building} all
 * @param {(piece: import("./data.mjs").Piece) => boolean} wanted @returns {[Vector, Vector]} */
export function bounds(all, wanted) {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const piece of all.pieces.filter(wanted)) {
    const { points } = all.meshes[piece.mesh];
    for (let k = 0; k < points.length; k += 3) {
      const [dx, dy, dz] = piece.row[0];
      const p = stand(piece.place, [points[k] + dx, points[k + 1] + dy, points[k + 2] + dz]);
      for (let axis = 0; axis < 3; axis++) {
        low[axis] = Math.min(low[axis], p[axis]);
        high[axis] = Math.max(high[axis], p[axis]);
      }
    }
  }
  return [/** @type {Vector} */ (low), /** @type {Vector} */ (high)];
}

/** @param {Building} all @returns {[Vector, Vector][]} lowest and highest corner of each body in its own frame */
export function boxes(all) {
  return all.meshes.map(({ points }) => {
    const low = [Infinity, Infinity, Infinity];
    const high = [-Infinity, -Infinity, -Infinity];
    for (let k = 0; k < points.length; k++) {
      low[k % 3] = Math.min(low[k % 3], points[k]);
      high[k % 3] = Math.max(high[k % 3], points[k]);
    }
    return [/** @type {Vector} */ (low), /** @type {Vector} */ (high)];
  });
}
