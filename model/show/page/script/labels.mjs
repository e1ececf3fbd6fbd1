/** Words over the picture: dimensions, pins of findings, the tape. They follow the points they are about. */

import { seen, uncut } from "./vector.mjs";

/** @typedef {import("./vector.mjs").Vector} Vector */
/** @typedef {{at: Vector, text: string, kind: string, ends?: [Vector, Vector], out?: Vector, press?: () => void}} Label
 *   ends: of a line that is drawn with it; out: which way it faces, hidden from behind */

const ROOM = 6; // pixels between words

export class Labels {
  /** @param {HTMLElement} over */
  constructor(over) {
    this.over = over;
    this.lines = /** @type {SVGElement} */ (over.querySelector("svg"));
    /** @type {{label: Label, word: HTMLElement, line: SVGLineElement | null}[]} */
    this.shown = [];
  }

  /** @param {Label[]} labels */
  set(labels) {
    for (const { word, line } of this.shown) {
      word.remove();
      line?.remove();
    }
    this.shown = labels.map((label) => ({ label, word: this.#word(label), line: label.ends ? this.#line() : null }));
  }

  /** @param {Label} label */
  #word(label) {
    const word = document.createElement(label.press ? "button" : "span");
    word.className = `label ${label.kind}`;
    word.textContent = label.text;
    if (label.press) {
      word.addEventListener("click", label.press);
      word.tabIndex = -1; // the list of findings is the way for the keyboard
    }
    this.over.append(word);
    return word;
  }

  #line() {
    return /** @type {SVGLineElement} */ (this.lines.appendChild(document.createElementNS(this.lines.namespaceURI, "line")));
  }

  /** Puts every word where its point is seen; those that would lie on another are left out, and sizes of what stands behind
   * something, whose pins are dashed.
   * @param {Float32Array} matrix @param {Vector} eye @param {number[]} cut
   * @param {((at: Vector) => boolean) | null} behind whether something stands before a point; null: as it was */
  place(matrix, eye, cut, behind) {
    const { clientWidth: width, clientHeight: height } = this.over;
    const spot = (/** @type {Vector} */ p) => {
      const at = seen(matrix, p);
      return at && Math.abs(at[0]) < 1.2 && Math.abs(at[1]) < 1.2
        ? [((at[0] + 1) * width) / 2, ((1 - at[1]) * height) / 2]
        : null;
    };
    /** @type {number[][]} */
    const taken = [];
    for (const { label, word, line } of this.shown) {
      const at = faces(label, eye) && uncut(label.at, cut) ? spot(label.at) : null;
      const size = [word.offsetWidth || 8 * label.text.length, word.offsetHeight || 20];
      const box = at ? [at[0] - size[0] / 2, at[1] - size[1] / 2, at[0] + size[0] / 2, at[1] + size[1] / 2] : [];
      const pin = Boolean(label.press);
      const room = at && (pin || !taken.some((other) => meets(box, other)));
      const far = behind ? Boolean(room && label.kind !== "tape" && behind(label.at)) : word.classList.contains("behind");
      const free = room && (pin || !far);
      word.classList.toggle("behind", far);
      word.title = far ? "behind what is seen" : "";
      word.style.visibility = free ? "visible" : "hidden";
      line?.setAttribute("visibility", free ? "visible" : "hidden");
      if (!at || !free) continue;
      taken.push(box);
      word.style.transform = `translate(${Math.round(box[0])}px, ${Math.round(box[1])}px)`;
      const [one, other] = label.ends?.map(spot) ?? [];
      if (line && one && other) {
        const ends = { x1: one[0], y1: one[1], x2: other[0], y2: other[1] };
        for (const [name, value] of Object.entries(ends)) line.setAttribute(name, String(value));
      }
    }
  }
}

/** @param {Label} label @param {Vector} eye */
function faces({ at, out }, eye) {
  return !out || out.reduce((sum, value, k) => sum + value * (eye[k] - at[k]), 0) > 0;
}

/** @param {number[]} a @param {number[]} b */
export function meets(a, b) {
  return a[0] - ROOM < b[2] && b[0] - ROOM < a[2] && a[1] - ROOM < b[3] && b[1] - ROOM < a[3];
}
