/** A building taken up by the graphics: its bodies, its rows and what stands around it, to be let go together. */

import { array, attribute, buffer, points } from "./gl.mjs";
import { overhead, sunward } from "./light.mjs";
import { merged, repeated } from "./mesh.mjs";
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
  return { layers: mesh.layers, broad: mesh.broad, faces: drawn(mesh.faces), sharp: drawn(mesh.sharp), blunt: drawn(mesh.blunt) };
}

/** @param {WebGL2RenderingContext} gl @param {Held} held @param {import("./mesh.mjs").Repeated} one */
function row(gl, held, { mesh, places, owners, count }) {
  const made = array(gl, held);
  attribute(gl, 0, buffer(gl, held, mesh.points), 3);
  attribute(gl, 1, buffer(gl, held, owners), 1, { each: 1 });
  const from = buffer(gl, held, places);
  for (let k = 0; k < 3; k++) attribute(gl, 2 + k, from, 4, { stride: 48, start: 16 * k, each: 1 });
  buffer(gl, held, mesh.faces, gl.ELEMENT_ARRAY_BUFFER);
  return { array: made, size: mesh.faces.length, count, owners, lit: false };
}
