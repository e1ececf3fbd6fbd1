/** How fast pictures come, and what is left out where they come slowly: while things move, and of the first answer to
 * anything that is asked. */

const SLOW = 50; // ms a picture

export class Pace {
  constructor() {
    /** @type {number[]} */
    this.times = [];
  }

  /** @param {number} ms that a picture took */
  took(ms) {
    this.times.push(ms);
  }

  /** Whether more pictures are wanted to know: two plain ones, and one of everything where those came fast enough. */
  get unsure() {
    return this.times.length < (this.#plain <= SLOW ? 3 : 2);
  }

  /** Whether it is known that a picture of everything is to be waited for. */
  get slow() {
    return !this.unsure && (this.#plain > SLOW || this.times[2] > 4 * SLOW);
  }

  /** Of the plain pictures, the one that was not waiting for anything else. */
  get #plain() {
    return Math.min(...this.times.slice(0, 2));
  }

  /** @param {boolean} coarse as while things move
   * @returns {{corners: boolean, shadows: number, fresh: boolean, lines: boolean, small: boolean, smooth: boolean, scale: number}}
   *   corners: whether the sky that is shut out is told, which is left out first; shadows: how many looks at the sun; fresh:
   *   whether shadows are of what stands now, not of what stood before; small: whether screws are drawn; smooth: without
   *   steps; scale: of pixels. The first picture is to come at once. */
  quality(coarse) {
    const scale = Math.min(2, globalThis.devicePixelRatio || 1);
    const [plain, whole] = [this.#plain, this.times[2] ?? 0];
    const best = { corners: whole <= SLOW, shadows: 4, fresh: true, lines: true, small: true, smooth: true, scale };
    if (this.times.length < 2) return { ...best, corners: false, shadows: 0, small: false, smooth: false };
    if (!this.slow) return best;
    if (!coarse) return { ...best, corners: false, shadows: 1 };
    const fewer = { corners: false, shadows: 1, fresh: false, small: false, smooth: false };
    return { ...best, ...fewer, lines: plain <= 4 * SLOW, scale: plain <= 2 * SLOW ? Math.min(1, scale) : 0.5 };
  }
}
