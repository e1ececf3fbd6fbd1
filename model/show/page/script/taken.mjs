/** A building taken up by the graphics: its bodies, its rows and what stands around it, to be let go together. */

import { array, attribute, buffer, points } from "./gl.mjs";
import { overhead, sunward } from "./light.mjs";
import { merged } from "./mesh.mjs";
import { repeated } from "./rows.mjs";
import { ground, person } from "./surroundings.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {import("./gl.mjs").Held} Held */

/** @param {WebGL2RenderingContext} gl @param {import("./data.mjs").Building} all @param {import("./room.mjs").Room} room */
export function taken(gl, all, { box, framed, level, beside }) {
  /** @type {Held} */
  const held = { buffers: [], arrays: [] };
  const [low, high] = framed;
  const reach = Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
  const centre = /** @type {Vector} */ ([(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, level]);
  return {
    held,
    framed,
    level,
    reach,
    centre,
    whole: whole(gl, held, merged(all)),
    rows: repeated(all).map((one) => row(gl, held, one)),
    ground: points(gl, held, ground(centre, 60 * reach, level)),
    person: points(gl, held, person(beside)),
    sunward: sunward(framed, level),
    overhead: overhead(box, level),
  };
}

/** @param {WebGL2RenderingContext} gl @param {Held} held @param {import("./mesh.mjs").Merged} mesh */
function whole(gl, held, mesh) {
  const from = buffer(gl, held, mesh.points);
  const owners = buffer(gl, held, mesh.owners);
  const drawn = (/** @type {Uint32Array} */ corners) => {
    const made = array(gl, held);
    attribute(gl, 0, from, 3);
    attribute(gl, 1, owners, 1);
    buffer(gl, held, corners, gl.ELEMENT_ARRAY_BUFFER);
    return { array: made, count: corners.length };
  };
  return { layers: mesh.layers, broad: mesh.broad, rims: mesh.rims, faces: drawn(mesh.faces), sharp: drawn(mesh.sharp), blunt: drawn(mesh.blunt) };
}

/** @param {WebGL2RenderingContext} gl @param {Held} held @param {import("./rows.mjs").Repeated} one */
function row(gl, held, { points, faces, heads, places, owners, slices }) {
  const made = array(gl, held);
  attribute(gl, 0, buffer(gl, held, points), 3);
  const [numbers, stood] = [buffer(gl, held, owners), buffer(gl, held, places)];
  buffer(gl, held, faces, gl.ELEMENT_ARRAY_BUFFER);
  /** Takes up its bodies from one on. @param {number} first */
  const from = (first) => {
    gl.bindVertexArray(made);
    attribute(gl, 1, numbers, 1, { start: 4 * first, each: 1 });
    for (let k = 0; k < 3; k++) attribute(gl, 2 + k, stood, 4, { stride: 48, start: 48 * first + 16 * k, each: 1 });
  };
  return { from, size: faces.length, heads, slices, owners, lit: false };
}
