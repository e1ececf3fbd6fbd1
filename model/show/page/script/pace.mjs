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
  }

  /** Whether more pictures are wanted to know: one with corners where the first two came fast enough. */
  get unsure() {
    return this.times.length < (this.#usual <= SLOW ? 3 : 2);
  }

  /** Of the first pictures, the one that was not waiting for anything else. */
  get #usual() {
    return Math.min(...this.times.slice(0, 2));
  }

  /** @param {boolean} moving
   * @returns {{corners: boolean, shadows: number, lines: boolean, small: boolean, smooth: boolean, scale: number}}
   *   corners: whether the sky that is shut out is told, which is left out first; shadows: how many looks at the
   *   sun; small: whether screws are drawn; smooth: without steps; scale: of pixels. The first picture is to come
   *   at once. */
  quality(moving) {
    const scale = Math.min(2, globalThis.devicePixelRatio || 1);
    const [usual, rich] = [this.#usual, this.times[2] ?? 0];
    const best = { corners: this.times.length > 1 && rich <= SLOW, shadows: 4, lines: true, small: true, smooth: true, scale };
    if (!this.times.length) return { ...best, shadows: 0, small: false, smooth: false };
    if (usual <= SLOW) return best;
    if (!moving) return { ...best, corners: false, shadows: 1 };
    const fewer = { corners: false, shadows: 0, small: false, smooth: false };
    return { ...best, ...fewer, lines: usual <= 4 * SLOW, scale: usual <= 2 * SLOW ? Math.min(1, scale) : 0.5 };
  }
}
