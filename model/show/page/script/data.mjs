/** The building out of the page: its pieces, and their bodies as numbers. */

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {{points: Float32Array, faces: Uint32Array}} Mesh points: x, y, z of each, mm */
/** @typedef {{origin: Vector, x: Vector, y: Vector, z: Vector}} Place */
/** @typedef {{number: number, name: string, role: string, mark: number, group: number, colour: number,
 *   paint: number, step: number, opening: string, mesh: number, place: Place, row: Vector[]}} Piece row: where it stands
 *   in its own frame, once at its origin unless it is a row */
/** @typedef {{fault: boolean, text: string, at: Vector | null, pieces: number[]}} Finding */
/** @typedef {{face: string, upper: number, under: number, top: "left" | "right" | "higher" | "lower", out: Vector, text: string,
 *   corners: Vector[]}} Lap */
/** @typedef {{face: string, what: string, from: Vector, to: Vector, out: Vector, text: string}} Edge */
/** @typedef {{part: string, name: string, hex: string, typed: string, table: string, key: string}} Paint
 *   typed: as a description has it */
/** @typedef {{name: string, units: string, groups: string[], skin: number[], marks: string[], colours: string[],
 *   paints: Paint[], findings: Finding[], laps: Lap[], edges: Edge[], meshes: Mesh[],
 *   keys: string[], pieces: Piece[], digest?: string, fields?: import("./offered.mjs").Field[], offers?: number[][],
 *   offer?: number[]}} Building keys: of the meshes, where others may follow; digest: of its description; fields: of that,
 *   which can be changed; offers: lists of their numbers; offer: which of the lists is each piece's */

const FINE = 100; // steps in a millimetre

/** @param {any} content of the page's block, or of a turn: then without its geometry where that stayed, and with those
 * of its bodies alone that were not there @param {Building | null} before @returns {Promise<Building>} */
export async function building(content, before = null) {
  const { geometry, pieces, steps, ...said } = content;
  const { meshes, keys, stood } = geometry ? await standing(geometry, pieces.name.length, before) : stayed(before);
  const known = new Map(before?.pieces.map(({ name, step }) => [name, step]));
  const found = pieces.name.map((/** @type {string} */ name, /** @type {number} */ number) => ({
    number,
    name,
    role: pieces.role[number],
    opening: pieces.opening[number],
    mark: pieces.mark[number],
    group: pieces.group[number],
    colour: pieces.colour[number],
    paint: pieces.paint[number],
    step: steps ? steps[number] : known.get(name) ?? 0,
    ...stood[number],
  }));
  return { findings: [], edges: [], ...said, meshes, keys, pieces: found };
}

/** @param {Building | null} before @returns {Standing} */
function stayed(before) {
  if (!before) throw new Error("no bodies came");
  return { meshes: before.meshes, keys: before.keys, stood: before.pieces.map(({ mesh, place, row }) => ({ mesh, place, row })) };
}

/** @typedef {{meshes: Mesh[], keys: string[], stood: {mesh: number, place: Place, row: Vector[]}[]}} Standing */

/** @param {any} geometry @param {number} size @param {Building | null} before @returns {Promise<Standing>} */
async function standing(geometry, size, before) {
  const fresh = numbers(await inflated(geometry.bytes), geometry, size);
  /** @type {string[]} */
  const keys = geometry.keys ?? [];
  const kept = new Map(before?.keys.map((key, k) => [key, before.meshes[k]]));
  for (const [k, number] of (geometry.fresh ?? []).entries()) kept.set(keys[number], fresh.meshes[k]);
  const meshes = geometry.keys ? keys.map((key) => /** @type {Mesh} */ (kept.get(key))) : fresh.meshes;
  const stood = fresh.places.map((place, number) => ({
    mesh: geometry.mesh[number],
    place,
    row: geometry.row[number] < 0 ? [vector([0, 0, 0])] : fresh.rows[geometry.row[number]],
  }));
  return { meshes, keys, stood };
}

/** @param {string} text base64 of gzip @returns {Promise<ArrayBuffer>} */
async function inflated(text) {
  const packed = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  return new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
}

/** The bodies, the rows and the places in a run of numbers.
 * @param {ArrayBuffer} buffer @param {{meshes: [number, number][], rows: number[]}} counts @param {number} pieces
 * @returns {{meshes: Mesh[], rows: Vector[][], places: Place[]}} */
export function numbers(buffer, counts, pieces) {
  let at = 0;
  const next = (/** @type {number} */ size) => {
    const found = new Int32Array(buffer, at, size);
    at += 4 * size;
    for (let k = 1; k < size; k++) found[k] += found[k - 1];
    return found;
  };
  const points = (/** @type {number} */ size) => [next(size), next(size), next(size)];
  const meshes = counts.meshes.map(([size, triangles]) => {
    const axes = points(size);
    const mesh = { points: new Float32Array(3 * size), faces: Uint32Array.from(next(3 * triangles)) };
    for (let k = 0; k < 3 * size; k++) mesh.points[k] = axes[k % 3][(k - (k % 3)) / 3] / FINE;
    return mesh;
  });
  const stood = points(counts.rows.reduce((sum, size) => sum + size, 0));
  const places = new Float32Array(buffer, at, 9 * pieces);
  let first = 0;
  const rows = counts.rows.map((size) => {
    const row = Array.from({ length: size }, (_, k) => vector(stood.map((axis) => axis[first + k] / FINE)));
    first += size;
    return row;
  });
  return { meshes, rows, places: Array.from({ length: pieces }, (_, k) => place(places, k, pieces)) };
}

/** @param {number[]} values @returns {Vector} */
function vector(values) {
  return [values[0], values[1], values[2]];
}

/** @param {Float32Array} columns @param {number} k @param {number} size @returns {Place} */
function place(columns, k, size) {
  const three = (/** @type {number} */ first) => vector([0, 1, 2].map((axis) => columns[(first + axis) * size + k]));
  const [origin, x, y] = [three(0), three(3), three(6)];
  const z = vector([x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]]);
  return { origin, x, y, z };
}

/** A point of a piece's frame in the building. @param {Place} place @param {Vector} p @returns {Vector} */
export function stand(place, p) {
  const { origin, x, y, z } = place;
  return vector([0, 1, 2].map((k) => origin[k] + x[k] * p[0] + y[k] * p[1] + z[k] * p[2]));
}

/** The same the other way. @param {Place} place @param {Vector} p @returns {Vector} */
export function unstand(place, p) {
  const off = vector([0, 1, 2].map((k) => p[k] - place.origin[k]));
  return vector([place.x, place.y, place.z].map((axis) => axis[0] * off[0] + axis[1] * off[1] + axis[2] * off[2]));
}
