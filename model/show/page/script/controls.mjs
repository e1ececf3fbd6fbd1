/** The panel: every control that stays whatever is shown, and what it does to the building on the screen. */

import { step, tried } from "./filled.mjs";
import { find, said as saidIn, show as showIn } from "./lists.mjs";
import { part } from "./part.mjs";

/** @typedef {import("./app.mjs").App} App */

/** @param {App} app */
export function wire(app) {
  views(app);
  cut(app);
  tape(app);
  card(app);
  theme();
  part("step", HTMLInputElement).addEventListener("input", () => step(app));
  part("as-built", HTMLButtonElement).addEventListener("click", () => {
    tried(app, app.all.paints.map(({ hex }) => hex));
  });
  app.found = (number, _, pieces) => {
    app.point(pieces);
    part("found", HTMLDetailsElement).open = true;
    const item = document.querySelector(`[data-finding="${number}"] button`);
    if (item instanceof HTMLElement) item.focus();
  };
  const ticked = /** @type {[string, (on: boolean) => void][]} */ ([
    ["clear", (on) => ((app.clear = on), app.dress())],
    ["lines", (on) => ((app.lines = on), app.draw())],
    ["person", (on) => ((app.person = on), (app.scene.stale = true), app.draw())],
    ["laps-on", (on) => ((app.laps = on), app.relabel())],
  ]);
  for (const [id, does] of ticked) {
    const box = part(id, HTMLInputElement);
    box.addEventListener("change", () => does(box.checked));
  }
  globalThis.addEventListener("beforeprint", () => paper(app));
}

/** @param {App} app */
function views(app) {
  for (const [number, button] of document.querySelectorAll("[data-view]").entries()) {
    button.addEventListener("click", () => app.view(number));
  }
  const level = part("parallel", HTMLButtonElement);
  level.addEventListener("click", () => {
    app.parallel = !app.parallel;
    level.setAttribute("aria-pressed", String(app.parallel));
    app.seen();
  });
}

/** @param {App} app */
function cut(app) {
  const way = part("cut-way", HTMLSelectElement);
  const at = part("cut-at", HTMLInputElement);
  const other = part("cut-other", HTMLInputElement);
  const said = part("cut-said", HTMLOutputElement);
  const does = () => {
    at.disabled = other.disabled = !way.value;
    said.textContent = app.slice(way.value ? Number(way.value) : null, Number(at.value) / 1000, other.checked);
  };
  for (const field of [way, at, other]) field.addEventListener("input", does);
  app.recut = does;
}

/** @param {App} app */
function tape(app) {
  const press = part("tape", HTMLButtonElement);
  const said = part("tape-said", HTMLParagraphElement);
  app.measured = (text) => (said.textContent = text);
  press.addEventListener("click", () => {
    app.taping = !app.taping;
    app.taped = [];
    press.setAttribute("aria-pressed", String(app.taping));
    said.textContent = app.taping ? "Pick a corner." : "Press, then pick a corner and another one.";
    document.body.classList.toggle("taping", app.taping);
    app.relabel();
  });
}

/** @param {App} app */
function card(app) {
  const home = part("lists", HTMLDetailsElement);
  const box = document.getElementById("card");
  const said = part("card-said", HTMLDListElement);
  const search = part("search", HTMLInputElement);
  search.addEventListener("input", () => find(home, search.value));
  part("card-away", HTMLButtonElement).addEventListener("click", () => app.light(""));
  app.told = (mark, piece) => {
    const row = showIn(home, mark);
    box?.toggleAttribute("hidden", !mark);
    if (!mark) return;
    const one = piece === null || piece === undefined ? null : app.all.pieces[piece];
    part("card-title", HTMLHeadingElement).textContent = one ? `${mark}: ${one.name}` : mark;
    const words = row ? saidIn(row).filter(([head]) => head !== "Mark") : [];
    said.replaceChildren(
      ...words.flatMap(([head, text]) => {
        const [name, value] = [document.createElement("dt"), document.createElement("dd")];
        name.textContent = head;
        value.textContent = text;
        return [name, value];
      }),
    );
  };
}

function theme() {
  const press = part("theme", HTMLButtonElement);
  const dark = () => document.documentElement.dataset.theme === "dark";
  const put = (/** @type {boolean} */ on) => {
    document.documentElement.dataset.theme = on ? "dark" : "light";
    press.setAttribute("aria-pressed", String(on));
  };
  put(globalThis.matchMedia("(prefers-color-scheme: dark)").matches);
  press.addEventListener("click", () => put(!dark()));
}

/** Keeps the picture for the paper. @param {App} app */
function paper(app) {
  app.drawn();
  const image = part("paper", HTMLImageElement);
  image.src = app.canvas.toDataURL("image/png");
  part("found", HTMLDetailsElement).open = app.all.findings.length > 0;
}
