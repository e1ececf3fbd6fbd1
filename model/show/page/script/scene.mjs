/** Draws the building: what it is given, and nothing unless it is asked. */

import { tangent } from "./camera.mjs";
import { depths, letGo, points, program, smooth } from "./gl.mjs";
import { ahead, matrix, outside, thinSeen } from "./lens.mjs";
import { SUN } from "./light.mjs";
import { LAYERS, LIT } from "./mesh.mjs";
import { runs } from "./rows.mjs";
import { AIR, CUT, DARKNESS, GROUND, NOTHING, PIECES, PLAIN, SKY, STRIP, STRIPS, WHOLE } from "./shaders.mjs";
import { taken } from "./taken.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {import("./camera.mjs").Eye} Eye */
/** @typedef {{eye: Eye, cut: number[], lines: boolean, person: boolean, shadows: number, fresh: boolean,
 *   accent: number[], small: boolean, strips: boolean, clear: boolean, corners: boolean,
 *   smooth: boolean, scale: number}} Shown */

const ACROSS = 1024; // texels of a line of looks
const SHADE = 2048;
const OVER = 1024;
const PANES = LAYERS.length - 1;
/** Pixels of its slope by which each layer is put behind the one that lies on it: some graphics know corners to a sixteenth
 * of a pixel, and what is seen aslant would come through what touches it. From inside nothing that touches is seen. */
const BEHIND = 0.2;
const GROUND_TONE = [0.72, 0.73, 0.66];
const HAZE = [0.9, 0.93, 0.95];
const HIGH = [0.52, 0.69, 0.86];
const CLOTHES = [0.42, 0.46, 0.52];

export class Scene {
  /** @param {HTMLCanvasElement} canvas @param {import("./data.mjs").Building} all
   * @param {import("./room.mjs").Room} room */
  constructor(canvas, all, room) {
    const gl = canvas.getContext("webgl2", { antialias: false, stencil: true, powerPreference: "high-performance" });
    if (!gl) throw new Error("no WebGL2");
    this.gl = gl;
    this.canvas = canvas;
    this.calls = 0;
    this.uncut = program(gl, PIECES, WHOLE);
    this.sliced = program(gl, PIECES, CUT);
    this.pieces = this.uncut;
    this.dark = program(gl, PIECES, DARKNESS);
    this.plain = program(gl, PLAIN, GROUND);
    this.sky = program(gl, SKY, AIR);
    this.strip = program(gl, STRIPS, STRIP);
    this.cast = program(gl, PLAIN, NOTHING);
    this.shade = depths(gl, SHADE);
    this.looks = gl.createTexture();
    this.own = taken(gl, all, room);
    /** @type {import("./gl.mjs").Held} */
    this.painted = { buffers: [], arrays: [] };
    this.strips = points(gl, this.painted, new Float32Array(0), 6);
    this.stale = true;
    this.shaded = false; // whether shadows were drawn yet
    /** Which pieces stand, as shadows were told. */
    this.stands = new Uint8Array(0);
    /** What shuts out the sky, once that is told. @type {ReturnType<typeof depths> | undefined} */
    this.over = undefined;
    this.covered = false;
    /** @type {ReturnType<typeof smooth> | undefined} */
    this.fine = undefined;
    this.ahead = 0;
    this.behind = 0;
    this.near = false;
    this.triangles = 0; // of the last picture
    gl.enable(gl.DEPTH_TEST);
    gl.depthFunc(gl.LEQUAL);
    gl.blendFuncSeparate(gl.SRC_ALPHA, gl.ONE_MINUS_SRC_ALPHA, gl.ONE, gl.ONE);
  }

  /** Takes up a building instead of the one before. @param {import("./data.mjs").Building} all
   * @param {import("./room.mjs").Room} room */
  build(all, room) {
    letGo(this.gl, this.own.held);
    this.own = taken(this.gl, all, room);
    this.stale = true;
    this.shaded = false;
  }

  /** What each piece looks like: four bytes each, its colour and its bits. @param {Uint8Array} looks */
  look(looks) {
    const { gl } = this;
    const lines = Math.max(1, Math.ceil(looks.length / 4 / ACROSS));
    const all = new Uint8Array(4 * ACROSS * lines);
    all.set(looks);
    gl.bindTexture(gl.TEXTURE_2D, this.looks);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA8, ACROSS, lines, 0, gl.RGBA, gl.UNSIGNED_BYTE, all);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.NEAREST);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.NEAREST);
    for (const row of this.own.rows) row.lit = row.owners.some((number) => looks[4 * number + 3] & LIT);
    const stands = looks.filter((_, k) => k % 4 === 3).map((bits) => bits & 1);
    this.stale ||= stands.length !== this.stands.length || stands.some((one, k) => one !== this.stands[k]);
    this.stands = stands;
  }

  /** The strips of laps: triangles, a colour behind each point. @param {Float32Array} data */
  lay(data) {
    letGo(this.gl, this.painted);
    this.strips = points(this.gl, this.painted, data, 6);
  }

  /** @param {Shown} shown @returns {Float32Array} the matrix it was drawn by */
  draw(shown) {
    const { gl, canvas } = this;
    [this.calls, this.triangles] = [0, 0];
    if (this.stale) this.covered = false;
    if (shown.shadows && shown.fresh && this.stale) this.#shadows(shown);
    if (shown.corners && !this.covered) this.#cover(shown);
    const width = Math.max(1, Math.round(canvas.clientWidth * shown.scale));
    const height = Math.max(1, Math.round(canvas.clientHeight * shown.scale));
    if (canvas.width !== width || canvas.height !== height) [canvas.width, canvas.height] = [width, height];
    gl.viewport(0, 0, width, height);
    if (shown.smooth) this.fine = smooth(gl, width, height, this.fine);
    gl.bindFramebuffer(gl.FRAMEBUFFER, shown.smooth && this.fine ? this.fine.frame : null);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT | gl.STENCIL_BUFFER_BIT);
    const seen = matrix(shown.eye, width / height, this.own);
    this.behind = outside(shown.eye, this.own.framed) ? BEHIND : 0;
    this.ahead = ahead(shown.eye, width / height, this.own);
    this.near = thinSeen(shown.eye, height);
    this.#air(shown.eye);
    gl.activeTexture(gl.TEXTURE2);
    gl.bindTexture(gl.TEXTURE_2D, this.over?.texture ?? null);
    gl.activeTexture(gl.TEXTURE1);
    gl.bindTexture(gl.TEXTURE_2D, this.shade.texture);
    gl.activeTexture(gl.TEXTURE0);
    gl.bindTexture(gl.TEXTURE_2D, this.looks);
    const { plan, heights } = this.own.overhead;
    const sky = { over: 2, plan, heights, corners: Number(shown.corners) };
    const light = { shade: 1, sunward: this.own.sunward, sun: SUN, shadows: this.shaded ? shown.shadows : 0, shown: seen, ...sky };
    this.#around(light, shown);
    const looks = { looks: 0, width: [ACROSS, 1], cut: shown.cut, accent: shown.accent };
    const cutting = shown.cut.some((value) => value !== 0);
    this.pieces = cutting ? this.sliced : this.uncut;
    gl.useProgram(this.pieces.use);
    this.pieces.set({ ...light, ...looks, line: 0 });
    if (!cutting) gl.enable(gl.CULL_FACE); // bodies are closed
    this.#surfaces(this.pieces, 0);
    if (shown.small) this.#rows(seen, shown.eye, height);
    if (shown.lines) this.#lines(0);
    if (shown.strips) this.#laps(seen, shown.cut);
    this.#clear(shown.clear);
    gl.disable(gl.CULL_FACE);
    if (shown.smooth) {
      gl.bindFramebuffer(gl.DRAW_FRAMEBUFFER, null);
      gl.blitFramebuffer(0, 0, width, height, 0, 0, width, height, gl.COLOR_BUFFER_BIT, gl.NEAREST);
      gl.bindFramebuffer(gl.READ_FRAMEBUFFER, null);
    }
    return seen;
  }

  /** Glass, and with `all` whatever is to be looked through. @param {boolean} all */
  #clear(all) {
    const { gl } = this;
    gl.useProgram(this.pieces.use);
    gl.enable(gl.BLEND);
    gl.depthMask(false);
    this.#surfaces(this.pieces, 1, !all);
    if (all) this.#lines(1);
    gl.depthMask(true);
    gl.disable(gl.BLEND);
  }

  /** @param {import("./gl.mjs").Program} how @param {number} pass @param {boolean} [panes] those alone */
  #surfaces(how, pass, panes = false) {
    const { gl } = this;
    how.set({ pass, line: 0, ahead: 0 });
    gl.bindVertexArray(this.own.whole.faces.array);
    gl.vertexAttrib4f(2, 1, 0, 0, 0);
    gl.vertexAttrib4f(3, 0, 1, 0, 0);
    gl.vertexAttrib4f(4, 0, 0, 1, 0);
    const { layers, broad, rims, faces } = this.own.whole;
    const end = this.near ? faces.count : broad;
    const apart = pass === 0 ? [0, ...layers.slice(0, PANES), end] : [0, end];
    const stretches = panes ? [[layers[PANES - 1], broad], [rims, end]] : apart.slice(1).map((to, k) => [apart[k], to]);
    gl.enable(gl.POLYGON_OFFSET_FILL);
    for (const [layer, [from, to]] of stretches.entries()) {
      gl.polygonOffset(pass === 0 && layer < PANES ? this.behind * layer : 0, 0);
      if (to > from) this.#call(() => gl.drawElements(gl.TRIANGLES, to - from, gl.UNSIGNED_INT, 4 * from), to - from);
    }
    gl.disable(gl.POLYGON_OFFSET_FILL);
  }

  /** @param {Float32Array} seen @param {Eye} eye @param {number} height pixels */
  #rows(seen, eye, height) {
    const { gl } = this;
    for (const row of this.own.rows) {
      for (const { first, count, size } of runs(row, seen, eye, height)) {
        row.from(first);
        this.#call(() => gl.drawElementsInstanced(gl.TRIANGLES, size, gl.UNSIGNED_INT, 0, count), size * count);
      }
    }
  }

  /** The edges, and fainter the bends. @param {number} pass */
  #lines(pass) {
    const { gl } = this;
    gl.enable(gl.BLEND);
    gl.enable(gl.STENCIL_TEST); // where lines crowd, none is drawn over another: a roof seen aslant stays its colour
    gl.stencilFunc(gl.EQUAL, 0, 255);
    gl.stencilOp(gl.KEEP, gl.KEEP, gl.INCR);
    for (const [stretch, line] of /** @type {[{array: any, count: number}, number][]} */ ([
      [this.own.whole.sharp, 0.7],
      [this.own.whole.blunt, 0.3],
    ])) {
      this.pieces.set({ pass, line, ahead: this.ahead });
      gl.bindVertexArray(stretch.array);
      gl.vertexAttrib4f(2, 1, 0, 0, 0);
      gl.vertexAttrib4f(3, 0, 1, 0, 0);
      gl.vertexAttrib4f(4, 0, 0, 1, 0);
      this.#call(() => gl.drawElements(gl.LINES, stretch.count, gl.UNSIGNED_INT, 0));
    }
    gl.disable(gl.STENCIL_TEST);
    gl.disable(gl.BLEND);
  }

  /** @param {Float32Array} seen @param {number[]} cut */
  #laps(seen, cut) {
    const { gl } = this;
    gl.useProgram(this.strip.use);
    this.strip.set({ shown: seen, cut });
    gl.bindVertexArray(this.strips.array);
    this.#call(() => gl.drawArrays(gl.TRIANGLES, 0, this.strips.count));
  }

  /** @param {Eye} eye */
  #air(eye) {
    const { gl } = this;
    gl.useProgram(this.sky.use);
    const half = tangent(eye);
    const horizon = eye.parallel ? -1 : -Math.tan(Math.min(1.5, eye.rise)) / -half;
    this.sky.set({ haze: HAZE, high: HIGH, horizon: eye.parallel ? -1 : horizon, steep: eye.parallel ? 0.25 : half * 1.6 });
    gl.bindVertexArray(this.strips.array);
    gl.depthMask(false);
    this.#call(() => gl.drawArrays(gl.TRIANGLES, 0, 3));
    gl.depthMask(true);
  }

  /** @param {Record<string, any>} light @param {Shown} shown */
  #around(light, shown) {
    const { gl } = this;
    gl.useProgram(this.plain.use);
    const ground = { tone: GROUND_TONE, haze: HAZE, centre: this.own.centre, reach: this.own.reach, flat_: 1 };
    this.plain.set({ ...light, ...ground });
    gl.bindVertexArray(this.own.ground.array);
    this.#call(() => gl.drawArrays(gl.TRIANGLES, 0, this.own.ground.count));
    if (!shown.person) return;
    this.plain.set({ tone: CLOTHES, flat_: 0 });
    gl.bindVertexArray(this.own.person.array);
    this.#call(() => gl.drawArrays(gl.TRIANGLES, 0, this.own.person.count));
  }

  /** What the sun sees. @param {Shown} shown */
  #shadows({ cut, person }) {
    const { gl } = this;
    this.#deep(this.shade, this.own.sunward, cut);
    if (person) {
      gl.useProgram(this.cast.use);
      this.cast.set({ shown: this.own.sunward });
      gl.bindVertexArray(this.own.person.array);
      gl.drawArrays(gl.TRIANGLES, 0, this.own.person.count);
    }
    [this.stale, this.shaded] = [false, true];
  }

  /** What is seen from straight above. @param {Shown} shown */
  #cover({ cut }) {
    this.over ??= depths(this.gl, OVER, false);
    this.#deep(this.over, this.own.overhead.matrix, cut);
    this.covered = true;
  }

  /** How deep all lies that throws a shadow. @param {ReturnType<typeof depths>} into @param {Float32Array} seen
   * @param {number[]} cut */
  #deep(into, seen, cut) {
    const { gl } = this;
    gl.bindFramebuffer(gl.FRAMEBUFFER, into.frame);
    gl.viewport(0, 0, into.size, into.size);
    gl.clear(gl.DEPTH_BUFFER_BIT);
    for (const unit of [gl.TEXTURE2, gl.TEXTURE1]) {
      gl.activeTexture(unit);
      gl.bindTexture(gl.TEXTURE_2D, null);
    }
    gl.activeTexture(gl.TEXTURE0);
    gl.bindTexture(gl.TEXTURE_2D, this.looks);
    gl.useProgram(this.dark.use);
    this.dark.set({ looks: 0, width: [ACROSS, 1], shown: seen, cut });
    this.#surfaces(this.dark, 2); // screws throw no shadow worth its time
  }

  /** @param {() => void} draw @param {number} [corners] of triangles */
  #call(draw, corners = 0) {
    draw();
    this.calls++;
    this.triangles += corners / 3;
  }
}
