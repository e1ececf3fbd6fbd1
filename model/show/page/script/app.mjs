/** The building on the screen: what is shown of it, what is lit, and when it is drawn. */

import { behind } from "./behind.mjs";
import { between, moved, named, nearer, place, ray, turned, VIEWS } from "./camera.mjs";
import { rgb } from "./colours.mjs";
import { length } from "./figures.mjs";
import { Labels } from "./labels.mjs";
import { GLASS, LIT } from "./mesh.mjs";
import { Pace } from "./pace.mjs";
import { hit } from "./pick.mjs";
import { room } from "./room.mjs";
import { Scene } from "./scene.mjs";
import { strips } from "./strips.mjs";
import { apart, middle } from "./vector.mjs";
import { pins, sizes, taped } from "./words.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {import("./data.mjs").Building} Building */

const ACCENT = [0.93, 0.43, 0.05];
const TURN = 350; // ms
const REST = 200; // ms after which nothing more is asked
const [SHOWN, CLEAR, OUTSIDE] = [1, 4, 8];
const NEAR_BY = 2500; // mm

export class App {
  /** @param {Building} all @param {HTMLCanvasElement} canvas @param {HTMLElement} overlay */
  constructor(all, canvas, overlay) {
    this.all = all;
    this.canvas = canvas;
    this.labels = new Labels(overlay);
    this.pace = new Pace();
    this.room = room(all);
    this.scene = new Scene(canvas, all, this.room);
    this.scene.lay(strips(all.laps));
    this.hidden = new Set();
    /** @type {Set<number>} */
    this.lit = new Set();
    /** What `light` was told last. @type {{mark: string, piece: number | null}} */
    this.picked = { mark: "", piece: null };
    this.tried = all.paints.map(({ hex }) => hex);
    this.clear = false;
    this.lines = true;
    this.person = true;
    this.parallel = false;
    this.laps = false;
    this.moving = false;
    this.waiting = false;
    /** @type {ReturnType<typeof setTimeout> | undefined} until it is drawn finely */
    this.rest = undefined;
    /** @type {number[]} */
    this.cut = [0, 0, 0, 0];
    /** @type {Vector[]} */
    this.taped = [];
    this.taping = false;
    /** The step up to which pieces stand. */
    this.step = Infinity;
    /** @type {(mark: string, piece: number | null) => void} told what is lit */
    this.told = () => {};
    /** @type {(text: string) => void} told what the tape says */
    this.measured = () => {};
    /** The named view that is seen, "" once it was left. */
    this.viewed = "corner";
    this.eye = this.#named(this.viewed);
    this.dress();
    this.relabel();
    new ResizeObserver(() => this.#resized()).observe(canvas);
  }

  /** Turns to another building; the eye, what is hidden, what is lit and what was tried stay as far as it has them.
   * @param {Building} all */
  turn(all) {
    const before = this.all;
    const names = this.picked.mark ? [this.picked.piece ?? [...this.lit][0]].map((k) => before.pieces[k]?.name) : [];
    const tried = new Map(before.paints.map(({ part, name, hex }, k) => [`${part} ${name}`, this.tried[k] === hex ? "" : this.tried[k]]));
    this.all = all;
    this.tried = all.paints.map(({ part, name, hex }) => tried.get(`${part} ${name}`) || hex);
    if (all.meshes !== before.meshes) {
      this.room = room(all);
      this.scene.build(all, this.room);
      this.taped = [];
    }
    this.scene.lay(strips(all.laps));
    this.recut();
    const again = all.pieces.find(({ name }) => names.includes(name));
    this.light(again ? all.marks[again.mark] : "", this.picked.piece === null ? null : again?.number);
    this.relabel();
  }

  get level() {
    return this.room.level;
  }

  get aspect() {
    return this.canvas.clientWidth / Math.max(1, this.canvas.clientHeight);
  }

  /** Keeps a named view whole, as when a phone is turned. */
  #resized() {
    if (this.viewed && !this.moving) this.eye = this.#named(this.viewed);
    this.draw();
  }

  /** @param {string} name */
  #named(name) {
    return named(name, name === "inside" ? this.room.hall : this.room.framed, this.level, this.aspect, this.parallel);
  }

  /** @param {number} piece */
  stands(piece) {
    const { group, step } = this.all.pieces[piece];
    return step <= this.step && !this.hidden.has(group);
  }

  /** Whether a piece stands and one does not look through it, nor past it as past screws. @param {number} piece */
  hides(piece) {
    const one = this.all.pieces[piece];
    return one.row.length === 1 && this.stands(piece) && !this.#through(one);
  }

  /** @param {import("./data.mjs").Piece} piece */
  #through({ number, role, group }) {
    return !this.lit.has(number) && (GLASS.has(role) || (this.clear && this.all.skin.includes(group)));
  }

  /** Tells the graphics how each piece looks now. */
  dress() {
    const { pieces, colours, skin } = this.all;
    const looks = new Uint8Array(4 * pieces.length);
    const bare = this.clear || this.step < Infinity || skin.some((group) => this.hidden.has(group));
    for (const piece of pieces) {
      const colour = piece.paint < 0 ? colours[piece.colour] : this.tried[piece.paint];
      const lit = this.lit.has(piece.number);
      const through = this.#through(piece);
      const outside = bare || skin.includes(piece.group);
      const bits =
        (this.stands(piece.number) ? SHOWN : 0) + (lit ? LIT : 0) + (through ? CLEAR : 0) + (outside ? OUTSIDE : 0);
      looks.set([...rgb(colour), bits], 4 * piece.number);
    }
    this.scene.look(looks);
    this.draw();
  }

  /** Lights all pieces of a mark, or none. @param {string} mark @param {number | null} piece the one that was picked */
  light(mark, piece = null) {
    const number = mark ? this.all.marks.indexOf(mark) : -1;
    this.lit = new Set(this.all.pieces.filter((one) => one.mark === number).map((one) => one.number));
    this.picked = { mark, piece };
    this.told(mark, piece);
    this.dress();
  }

  /** Lights some pieces, whatever their marks. @param {number[]} pieces */
  point(pieces) {
    this.lit = new Set(pieces);
    this.picked = { mark: "", piece: null };
    this.told("", null);
    this.dress();
  }

  /** Leaves what stands after a step, and lights what came in it. @param {number} step Infinity for all */
  raise(step) {
    this.step = step;
    this.point(this.all.pieces.filter((piece) => piece.step === step).map(({ number }) => number));
  }

  /** @param {number} x @param {number} y -1 to 1 */
  pick(x, y) {
    const found = hit(this.all, this.room.boxed, ray(this.eye, this.aspect, x, y), (k) => this.stands(k), this.cut);
    if (this.taping) {
      if (found) this.tape(found.corner);
      return;
    }
    this.light(found ? this.all.marks[this.all.pieces[found.piece].mark] : "", found?.piece);
  }

  /** @param {Vector} corner */
  tape(corner) {
    this.taped = this.taped.length === 1 ? [...this.taped, corner] : [corner];
    if (this.taped.length === 2) this.measured(length(apart(this.taped[0], this.taped[1]), this.all.units));
    else this.measured("Now the other corner.");
    this.relabel();
  }

  /** @param {number | null} axis @param {number} share of the way through @param {boolean} other side kept */
  slice(axis, share, other) {
    this.cut = [0, 0, 0, 0];
    this.scene.stale = true;
    this.draw();
    if (axis === null) return "";
    const [low, high] = [this.room.box[0][axis], this.room.box[1][axis]];
    const at = low + share * (high - low);
    const sign = other ? -1 : 1;
    const kept = axis === 2 ? 1 : -1; // from the front left one looks into what stands behind the cut
    this.cut[axis] = sign * kept;
    this.cut[3] = -sign * kept * at;
    return length(at - Math.min(0, low), this.all.units);
  }

  /** Cuts again as the controls say. */
  recut = () => {};
  /** The words over the picture. */
  relabel() {
    const pinned = pins(this.all, (number, text, pieces) => this.found(number, text, pieces));
    this.labels.set([...taped(this.taped, this.all.units), ...pinned, ...(this.laps ? sizes(this.all) : [])]);
    this.draw();
  }

  /** @type {(number: number, text: string, pieces: number[]) => void} told which finding's pin was pressed */
  found = () => {};

  /** @param {number} number of the named views */
  view(number) {
    this.go(this.#named(VIEWS[number]));
    this.viewed = VIEWS[number];
  }

  /** Goes on in perspective or in parallel, as was chosen; in parallel nothing is seen from under the ground. */
  seen() {
    if (this.viewed) this.view(VIEWS.indexOf(this.viewed));
    else this.go({ ...this.eye, parallel: this.parallel, wide: false, rise: this.parallel ? Math.max(0, this.eye.rise) : this.eye.rise });
  }

  /** Goes to a place of the building, to look at it from outside. @param {Vector} at */
  visit(at) {
    const [x, y] = middle(...this.room.box);
    const turn = Math.atan2(at[0] - x, y - at[1]) + 0.3;
    const near = { ...this.eye, target: at, turn, rise: 0.25, away: NEAR_BY, wide: false };
    this.go(turned(near, 0, 0, this.level));
  }

  /** @param {import("./camera.mjs").Eye} to */
  go(to) {
    this.viewed = "";
    const from = this.eye;
    const still = globalThis.matchMedia("(prefers-reduced-motion: reduce)").matches;
    const start = performance.now();
    const flight = (this.flight = {});
    const on = () => {
      if (this.flight !== flight) return;
      const share = still ? 1 : Math.min(1, (performance.now() - start) / TURN);
      this.eye = share < 1 ? between(from, to, share * share * (3 - 2 * share)) : to;
      this.moving = share < 1;
      if (share < 1) requestAnimationFrame(on);
      this.draw();
    };
    on();
  }

  /** @param {"turn" | "move" | "near"} how @param {number[]} by */
  steer(how, ...by) {
    this.flight = null;
    this.viewed = "";
    if (how === "turn") this.eye = turned(this.eye, by[0], by[1], this.level);
    else if (how === "move") this.eye = moved(this.eye, by[0], by[1]);
    else this.eye = nearer(this.eye, by[0]);
    this.draw();
  }

  /** Draws soon, once, however often it is asked: where pictures come slowly coarsely, and finely when no more is asked. */
  draw() {
    if (this.waiting) return;
    this.waiting = true;
    requestAnimationFrame(() => {
      this.waiting = false;
      this.drawn(this.pace.slow);
    });
  }

  /** Draws at once. @param {boolean} coarse */
  drawn(coarse = this.moving) {
    clearTimeout(this.rest);
    const quality = this.pace.quality(coarse);
    const unsure = this.pace.unsure;
    const start = performance.now();
    this.matrix = this.scene.draw({
      ...quality,
      eye: this.eye,
      cut: this.cut,
      lines: this.lines && quality.lines,
      person: this.person,
      accent: ACCENT,
      strips: this.laps,
      clear: this.clear,
    });
    if (unsure) {
      this.scene.gl.readPixels(0, 0, 1, 1, this.scene.gl.RGBA, this.scene.gl.UNSIGNED_BYTE, new Uint8Array(4)); // waits for it
      this.pace.took(performance.now() - start);
    }
    if (unsure && !this.pace.slow) this.draw();
    else if ((unsure || coarse) && !this.moving) this.rest = setTimeout(() => this.drawn(), REST);
    const far = coarse ? null : behind(this.all, this.room.boxed, this.eye, (k) => this.hides(k), this.cut);
    this.labels.place(this.matrix, place(this.eye), this.cut, this.moving ? () => false : far);
    document.body.dataset.drawn = String(Number(document.body.dataset.drawn ?? 0) + 1);
  }
}
