/** Small helpers around WebGL2: programs, buffers, uniforms by name. */

/** @typedef {WebGL2RenderingContext} GL */
/** @typedef {{use: WebGLProgram, set: (values: Record<string, number | number[] | Float32Array>) => void}} Program */

/** A program of two texts. Its integers are named in `whole`.
 * @param {GL} gl @param {string} points @param {string} colours @returns {Program} */
export function program(gl, points, colours) {
  const made = /** @type {WebGLProgram} */ (gl.createProgram());
  for (const [kind, text] of /** @type {[number, string][]} */ ([
    [gl.VERTEX_SHADER, points],
    [gl.FRAGMENT_SHADER, colours],
  ])) {
    const shader = /** @type {WebGLShader} */ (gl.createShader(kind));
    gl.shaderSource(shader, text);
    gl.compileShader(shader);
    gl.attachShader(made, shader);
  }
  gl.linkProgram(made);
  if (!gl.getProgramParameter(made, gl.LINK_STATUS)) {
    const said = (gl.getAttachedShaders(made) ?? []).map((shader) => gl.getShaderInfoLog(shader));
    throw new Error([gl.getProgramInfoLog(made), ...said].join("\n"));
  }
  /** @type {Map<string, WebGLActiveInfo & {where: WebGLUniformLocation}>} */
  const known = new Map();
  for (let k = 0; k < gl.getProgramParameter(made, gl.ACTIVE_UNIFORMS); k++) {
    const info = /** @type {any} */ (gl.getActiveUniform(made, k));
    known.set(info.name, Object.assign(info, { where: gl.getUniformLocation(made, info.name) }));
  }
  return { use: made, set: (values) => put(gl, known, values) };
}

/** @param {GL} gl @param {Map<string, any>} known @param {Record<string, any>} values */
function put(gl, known, values) {
  for (const [name, value] of Object.entries(values)) {
    const uniform = known.get(name);
    if (!uniform) continue;
    const { where, type } = uniform;
    if (type === gl.FLOAT_MAT4) gl.uniformMatrix4fv(where, false, value);
    else if (type === gl.FLOAT_VEC4) gl.uniform4fv(where, value);
    else if (type === gl.FLOAT_VEC3) gl.uniform3fv(where, value);
    else if (type === gl.FLOAT_VEC2) gl.uniform2fv(where, value);
    else if (type === gl.FLOAT) gl.uniform1f(where, value);
    else gl.uniform1i(where, value);
  }
}

/** What was made for a building, to be let go with it. @typedef {{buffers: WebGLBuffer[], arrays: WebGLVertexArrayObject[]}} Held */

/** @param {GL} gl @param {Held} held */
export function letGo(gl, held) {
  for (const one of held.arrays.splice(0)) gl.deleteVertexArray(one);
  for (const one of held.buffers.splice(0)) gl.deleteBuffer(one);
}

/** A list of attributes, taken up. @param {GL} gl @param {Held} held */
export function array(gl, held) {
  const made = /** @type {WebGLVertexArrayObject} */ (gl.createVertexArray());
  held.arrays.push(made);
  gl.bindVertexArray(made);
  return made;
}

/** @param {GL} gl @param {Held} held @param {Float32Array | Uint32Array} data @param {number} [target] */
export function buffer(gl, held, data, target = gl.ARRAY_BUFFER) {
  const made = /** @type {WebGLBuffer} */ (gl.createBuffer());
  held.buffers.push(made);
  gl.bindBuffer(target, made);
  gl.bufferData(target, data, gl.STATIC_DRAW);
  return made;
}

/** What an attribute is read from. @param {GL} gl @param {number} place @param {WebGLBuffer | null} from
 * @param {number} size @param {{stride?: number, start?: number, each?: number}} [how] each: 1 for one of a row */
export function attribute(gl, place, from, size, { stride = 0, start = 0, each = 0 } = {}) {
  gl.bindBuffer(gl.ARRAY_BUFFER, from);
  gl.enableVertexAttribArray(place);
  gl.vertexAttribPointer(place, size, gl.FLOAT, false, stride, start);
  gl.vertexAttribDivisor(place, each);
}

/** A list of points to be drawn as triangles, with three numbers more each where `stride` says so.
 * @param {GL} gl @param {Held} held @param {Float32Array} data @param {number} numbers each point has */
export function points(gl, held, data, numbers = 3) {
  const made = array(gl, held);
  const from = buffer(gl, held, data);
  for (let k = 0; 3 * k < numbers; k++) attribute(gl, k, from, 3, { stride: 4 * numbers, start: 12 * k });
  return { array: made, count: data.length / numbers };
}

/** A map of depths, as seen from the sun or from above.
 * @param {GL} gl @param {number} size @param {boolean} [compared] whether it is asked what lies behind it, not how deep */
export function depths(gl, size, compared = true) {
  const texture = gl.createTexture();
  gl.bindTexture(gl.TEXTURE_2D, texture);
  gl.texStorage2D(gl.TEXTURE_2D, 1, gl.DEPTH_COMPONENT24, size, size);
  for (const [name, value] of [
    [gl.TEXTURE_COMPARE_MODE, compared ? gl.COMPARE_REF_TO_TEXTURE : gl.NONE],
    [gl.TEXTURE_COMPARE_FUNC, gl.LEQUAL],
    [gl.TEXTURE_MIN_FILTER, compared ? gl.LINEAR : gl.NEAREST],
    [gl.TEXTURE_MAG_FILTER, compared ? gl.LINEAR : gl.NEAREST],
    [gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE],
    [gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE],
  ]) {
    gl.texParameteri(gl.TEXTURE_2D, name, value);
  }
  const frame = gl.createFramebuffer();
  gl.bindFramebuffer(gl.FRAMEBUFFER, frame);
  gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.DEPTH_ATTACHMENT, gl.TEXTURE_2D, texture, 0);
  gl.bindFramebuffer(gl.FRAMEBUFFER, null);
  return { texture, frame, size };
}

/** Something to draw on with several samples a pixel. @typedef {{frame: WebGLFramebuffer | null, kept: (WebGLRenderbuffer | null)[],
 *   width: number, height: number}} Smooth */

/** @param {GL} gl @param {number} width @param {number} height @param {Smooth} [before] kept where it is as large, else let go
 * @returns {Smooth} */
export function smooth(gl, width, height, before) {
  if (before?.width === width && before.height === height) return before;
  for (const kept of before?.kept ?? []) gl.deleteRenderbuffer(kept);
  gl.deleteFramebuffer(before?.frame ?? null);
  const frame = gl.createFramebuffer();
  gl.bindFramebuffer(gl.FRAMEBUFFER, frame);
  const kept = [
    [gl.RGBA8, gl.COLOR_ATTACHMENT0],
    [gl.DEPTH24_STENCIL8, gl.DEPTH_STENCIL_ATTACHMENT],
  ].map(([form, place]) => {
    const made = gl.createRenderbuffer();
    gl.bindRenderbuffer(gl.RENDERBUFFER, made);
    gl.renderbufferStorageMultisample(gl.RENDERBUFFER, 4, form, width, height);
    gl.framebufferRenderbuffer(gl.FRAMEBUFFER, place, gl.RENDERBUFFER, made);
    return made;
  });
  return { frame, kept, width, height };
}
