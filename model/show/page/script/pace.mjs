/** How fast pictures come, and what is left out while things move where they come slowly. */

const SLOW = 50; // ms a picture

export class Pace {
  constructor() {
    /** @type {number[]} */
    this.times = [];
  }

  /** @param {number} ms that a whole picture took */
  took(ms) {
    this.times.push(ms);
    if (this.times.length > 3) this.times.shift();
  }

  /** Whether more pictures are wanted to know. */
  get unsure() {
    return this.times.length < 2;
  }

  /** @param {boolean} moving
   * @returns {{shadows: number, lines: boolean, small: boolean, smooth: boolean, scale: number}} shadows: how
   *   many looks at the sun; small: whether screws are drawn; smooth: without steps; scale: of pixels.
   *   The first picture is to come at once. */
  quality(moving) {
    const scale = Math.min(2, globalThis.devicePixelRatio || 1);
    const usual = Math.min(...this.times);
    const best = { shadows: 4, lines: true, small: true, smooth: true, scale };
    if (!this.times.length) return { ...best, shadows: 0, smooth: false };
    if (usual <= SLOW) return best;
    if (!moving) return { ...best, shadows: 1 };
    return { shadows: 0, lines: usual <= 4 * SLOW, small: false, smooth: false, scale: usual <= 2 * SLOW ? Math.min(1, scale) : 0.5 };
  }
}
