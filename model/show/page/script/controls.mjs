/** The panel: every control and what it does to the building on the screen. */

import { fields, lines } from "./colours.mjs";
import { listen as listenToLists, said as saidIn, show as showIn } from "./lists.mjs";

/** @typedef {import("./app.mjs").App} App */

/** @template {HTMLElement} T @param {string} id @param {new () => T} kind @returns {T} */
export function part(id, kind) {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`no ${id}`);
  return found;
}

/** @param {App} app */
export function wire(app) {
  views(app);
  groups(app);
  cut(app);
  steps(app);
  colours(app);
  tape(app);
  card(app);
  findings(app);
  theme();
  const ticked = /** @type {[string, (on: boolean) => void][]} */ ([
    ["clear", (on) => ((app.clear = on), app.dress())],
    ["lines", (on) => ((app.lines = on), app.draw())],
    ["person", (on) => ((app.person = on), app.dress())],
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
    app.go({ ...app.eye, parallel: app.parallel, wide: false });
  });
}

/** @param {App} app */
function groups(app) {
  const home = part("groups", HTMLFieldSetElement);
  for (const [number, name] of app.all.groups.entries()) {
    const own = app.all.pieces.filter(({ group }) => group === number);
    const count = own.reduce((sum, { row }) => sum + row.length, 0);
    if (!count) continue;
    const label = document.createElement("label");
    const box = document.createElement("input");
    box.type = "checkbox";
    box.checked = true;
    const said = document.createElement("small");
    said.textContent = count.toLocaleString("en");
    label.append(box, ` ${name} `, said);
    home.append(label);
    box.addEventListener("change", () => {
      if (box.checked) app.hidden.delete(number);
      else app.hidden.add(number);
      app.dress();
    });
  }
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
}

/** From the bare ground to all of it. @param {App} app */
function steps(app) {
  const home = part("steps", HTMLDetailsElement);
  const items = [...home.querySelectorAll("ol > li")];
  const at = part("step", HTMLInputElement);
  const said = part("step-said", HTMLOutputElement);
  at.max = String(items.length + 1);
  at.value = at.max;
  at.addEventListener("input", () => {
    const step = Number(at.value) - 1;
    for (const [number, item] of items.entries()) item.classList.toggle("now", number === step);
    const name = items[step]?.querySelector("b")?.textContent;
    said.textContent = name ? `${step + 1} of ${items.length}: ${name}` : "all of it";
    app.raise(step < items.length ? step : Infinity);
  });
}

/** @param {App} app */
function colours(app) {
  const { paints } = app.all;
  const toml = part("toml", HTMLPreElement);
  const own = fields(part("paints", HTMLDivElement), paints, () => tried());
  const tried = () => {
    app.tried = own.map(({ value }) => value);
    toml.textContent = lines(paints, app.tried) || "as it was built";
    app.dress();
  };
  part("as-built", HTMLButtonElement).addEventListener("click", () => {
    for (const [k, field] of own.entries()) field.value = paints[k].hex;
    tried();
  });
  toml.textContent = "as it was built";
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
  listenToLists(home, part("search", HTMLInputElement), (mark) => app.light(mark));
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

/** @param {App} app */
function findings(app) {
  for (const item of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-finding]"))) {
    const number = Number(item.dataset.finding);
    const words = item.querySelector("span");
    const press = document.createElement("button");
    press.type = "button";
    press.textContent = words?.textContent ?? "";
    words?.replaceWith(press);
    press.addEventListener("click", () => {
      const { at, pieces } = app.all.findings[number];
      if (at) app.visit(at);
      app.point(pieces);
    });
  }
  app.found = (number, _, pieces) => {
    app.point(pieces);
    part("found", HTMLDetailsElement).open = true;
    const item = document.querySelector(`[data-finding="${number}"] button`);
    if (item instanceof HTMLElement) item.focus();
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
