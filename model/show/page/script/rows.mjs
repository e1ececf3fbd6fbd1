/** Small bodies that stand in rows, screws, and which of them a picture needs: they are kept in slices along the building,
 * and left out are those that are not in view or too far off to be seen. */

import { stand } from "./data.mjs";
import { inView, lookedAt, smallSeen } from "./lens.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {import("./data.mjs").Building} Building */
/** @typedef {import("./data.mjs").Mesh} Mesh */
/** @typedef {{first: number, count: number, box: [Vector, Vector]}} Slice first: of its bodies, among all */
/** @typedef {{points: Float32Array, faces: Uint32Array, heads: number, places: Float32Array, owners: Float32Array,
 *   slices: Slice[]}} Repeated heads: where their heads end in faces; places: twelve numbers each, its three axes' rows with
 *   the offset behind */
/** @typedef {{first: number, count: number, size: number}} Run size: how many corners of each body are drawn */

const SLICE = 5000; // mm along the building
const FLAT = 0.02; // mm, twice as fine as bodies are carried

/** The rows, by body. @param {Building} all @returns {Repeated[]} */
export function repeated(all) {
  /** @type {Map<number, import("./data.mjs").Piece[]>} */
  const rows = new Map();
  for (const piece of all.pieces.filter(({ row }) => row.length > 1)) {
    rows.set(piece.mesh, [...(rows.get(piece.mesh) ?? []), piece]);
  }
  return [...rows].map(([mesh, pieces]) => row(all.meshes[mesh], pieces));
}

/** @param {Mesh} mesh @param {import("./data.mjs").Piece[]} pieces @returns {Repeated} */
function row(mesh, pieces) {
  const bodies = pieces.flatMap(({ place, row, number }) => row.map((offset) => ({ place, number, at: stand(place, offset) })));
  const [wide, long] = [0, 1].map((axis) => {
    const along = bodies.map(({ at }) => at[axis]);
    return along.reduce((a, b) => Math.max(a, b)) - along.reduce((a, b) => Math.min(a, b));
  });
  const slice = (/** @type {{at: Vector}} */ { at }) => Math.floor(at[wide > long ? 0 : 1] / SLICE);
  bodies.sort((a, b) => slice(a) - slice(b));
  return {
    ...headsFirst(mesh),
    places: new Float32Array(bodies.flatMap(({ place: { x, y, z }, at }) => [0, 1, 2].flatMap((k) => [x[k], y[k], z[k], at[k]]))),
    owners: new Float32Array(bodies.map(({ number }) => number)),
    slices: sliced(bodies, slice, mesh.points.reduce((most, value) => Math.max(most, Math.abs(value)), 0) * Math.sqrt(3)),
  };
}

/** @template {{at: Vector}} Body @param {Body[]} bodies in the order of their slices @param {(body: Body) => number} slice
 * @param {number} around mm, how far a body reaches around its place @returns {Slice[]} */
function sliced(bodies, slice, around) {
  /** @type {Slice[]} */
  const found = [];
  for (const [first, body] of bodies.entries()) {
    if (!first || slice(body) !== slice(bodies[first - 1])) {
      found.push({ first, count: 0, box: [[Infinity, Infinity, Infinity], [-Infinity, -Infinity, -Infinity]] });
    }
    const own = found[found.length - 1];
    own.count++;
    for (let k = 0; k < 3; k++) {
      own.box[0][k] = Math.min(own.box[0][k], body.at[k] - around);
      own.box[1][k] = Math.max(own.box[1][k], body.at[k] + around);
    }
  }
  return found;
}

/** A screw's triangles, first those of its head and washer, which stand out of what it holds. @param {Mesh} mesh */
function headsFirst({ points, faces }) {
  /** @type {number[][]} */
  const [heads, shanks] = [[], []];
  for (let k = 0; k < faces.length; k += 3) {
    const three = [faces[k], faces[k + 1], faces[k + 2]];
    (three.every((corner) => points[3 * corner + 2] > -FLAT) ? heads : shanks).push(...three);
  }
  return { points, faces: new Uint32Array([...heads, ...shanks]), heads: heads.length || faces.length };
}

/** What is drawn of a row: of what is in view and near enough to be seen, or lit, the heads, and the whole of what is
 * looked at. @param {{slices: Slice[], size: number, heads: number, lit: boolean}} row @param {Float32Array} matrix
 * @param {import("./camera.mjs").Eye} eye @param {number} height of the picture, pixels @returns {Run[]} */
export function runs({ slices, size, heads, lit }, matrix, eye, height) {
  /** @type {Run[]} */
  const found = [];
  for (const { first, count, box } of slices) {
    const near = smallSeen(eye, height, box);
    if (!(near || lit) || !inView(matrix, box)) continue;
    const last = found[found.length - 1];
    const wanted = near && lookedAt(eye, box) ? size : heads;
    if (last && last.first + last.count === first && last.size === wanted) last.count += count;
    else found.push({ first, count, size: wanted });
  }
  return found;
}
