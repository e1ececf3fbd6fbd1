/** Vectors as [x, y, z], in mm of the building; 4 x 4 matrices column by column, as the shaders take them. */

/** @typedef {[number, number, number]} Vector */

/** @param {Vector} a @param {Vector} b @param {number} [scale] @returns {Vector} a + scale * b */
export function plus(a, b, scale = 1) {
  return [a[0] + scale * b[0], a[1] + scale * b[1], a[2] + scale * b[2]];
}

/** @param {Vector} a @param {Vector} b @returns {number} */
export function dot(a, b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** @param {Vector} a @param {Vector} b @returns {Vector} */
export function cross(a, b) {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** @param {Vector} a @returns {Vector} */
export function unit(a) {
  const size = Math.hypot(...a) || 1;
  return [a[0] / size, a[1] / size, a[2] / size];
}

/** @param {Vector} a @param {Vector} b @returns {number} */
export function apart(a, b) {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/** @param {Vector} a @param {Vector} b @returns {Vector} */
export function middle(a, b) {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
}

/** @param {Float32Array} a @param {Float32Array} b @returns {Float32Array} the matrix that does b, then a */
export function times(a, b) {
  const found = new Float32Array(16);
  for (let column = 0; column < 4; column++) {
    for (let row = 0; row < 4; row++) {
      let sum = 0;
      for (let k = 0; k < 4; k++) sum += a[4 * k + row] * b[4 * column + k];
      found[4 * column + row] = sum;
    }
  }
  return found;
}

/** A frame that looks along -z. @param {Vector} eye @param {Vector} target @param {Vector} up */
export function looking(eye, target, up) {
  const z = unit(plus(eye, target, -1));
  const x = unit(cross(up, z));
  const y = cross(z, x);
  const at = [-dot(x, eye), -dot(y, eye), -dot(z, eye)];
  return new Float32Array([x[0], y[0], z[0], 0, x[1], y[1], z[1], 0, x[2], y[2], z[2], 0, ...at, 1]);
}

/** @param {number} tangent of half the angle of its height @param {number} aspect @param {number} near @param {number} far */
export function perspective(tangent, aspect, near, far) {
  const found = new Float32Array(16);
  found[0] = 1 / (tangent * aspect);
  found[5] = 1 / tangent;
  found[10] = (far + near) / (near - far);
  found[11] = -1;
  found[14] = (2 * far * near) / (near - far);
  return found;
}

/** @param {number} width half of it @param {number} height half of it @param {number} near @param {number} far */
export function parallel(width, height, near, far) {
  const found = new Float32Array(16);
  found[0] = 1 / width;
  found[5] = 1 / height;
  found[10] = 2 / (near - far);
  found[14] = (far + near) / (near - far);
  found[15] = 1;
  return found;
}

/** A point as a matrix shows it, -1 to 1 each way; null behind the eye.
 * @param {Float32Array} m @param {Vector} p @returns {Vector | null} */
export function seen(m, p) {
  const w = m[3] * p[0] + m[7] * p[1] + m[11] * p[2] + m[15];
  if (w <= 0) return null;
  const along = (/** @type {number} */ k) => (m[k] * p[0] + m[k + 4] * p[1] + m[k + 8] * p[2] + m[k + 12]) / w;
  return [along(0), along(1), along(2)];
}

/** Whether a point is on the side of a plane that is kept; a plane of noughts cuts nothing.
 * @param {Vector} p @param {number[]} cut */
export function uncut(p, cut) {
  return cut[0] * p[0] + cut[1] * p[1] + cut[2] * p[2] + cut[3] <= 0;
}
