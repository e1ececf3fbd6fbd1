/** What of the panel follows from a building: its groups, colours, steps, lists and findings. */

import { fields, lines } from "./colours.mjs";
import { find, listen } from "./lists.mjs";
import { part } from "./part.mjs";

/** @typedef {import("./app.mjs").App} App */

/** What is known of it as soon as it is seen. @param {App} app */
export function fillSeen(app) {
  groups(app);
  tried(app, app.tried);
}

/** What is known once it was audited and said. @param {App} app */
export function fillFound(app) {
  const lists = part("lists", HTMLDetailsElement);
  listen(lists, (mark) => app.light(mark));
  find(lists, part("search", HTMLInputElement).value);
  steps(app);
  findings(app);
}

/** @param {App} app */
function groups(app) {
  const home = part("groups", HTMLFieldSetElement);
  for (const label of home.querySelectorAll("label")) label.remove();
  for (const [number, name] of app.all.groups.entries()) {
    const own = app.all.pieces.filter(({ group }) => group === number);
    const count = own.reduce((sum, { row }) => sum + row.length, 0);
    if (!count) continue;
    const label = document.createElement("label");
    const box = document.createElement("input");
    box.type = "checkbox";
    box.checked = !app.hidden.has(number);
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

/** Shows colours that are tried, and their lines for the description. @param {App} app @param {string[]} hexes */
export function tried(app, hexes) {
  const { paints } = app.all;
  const home = part("paints", HTMLDivElement);
  home.replaceChildren();
  const own = fields(home, paints, () => put(own.map(({ value }) => value)));
  for (const [k, field] of own.entries()) field.value = hexes[k];
  const put = (/** @type {string[]} */ chosen) => {
    app.tried = chosen;
    part("toml", HTMLPreElement).textContent = lines(paints, chosen) || "as it was built";
    app.dress();
  };
  put(hexes);
}

/** From the bare ground to all of it. @param {App} app */
function steps(app) {
  const at = part("step", HTMLInputElement);
  at.max = String(ordered().length + 1);
  if (app.step === Infinity) at.value = at.max;
  else step(app);
}

/** Leaves what stands after the step that the slider is at. @param {App} app */
export function step(app) {
  const items = ordered();
  const at = Number(part("step", HTMLInputElement).value) - 1;
  for (const [number, item] of items.entries()) item.classList.toggle("now", number === at);
  const name = items[at]?.querySelector("b")?.textContent;
  part("step-said", HTMLOutputElement).textContent = name ? `${at + 1} of ${items.length}: ${name}` : "all of it";
  app.raise(at < items.length ? at : Infinity);
}

function ordered() {
  return [...part("steps", HTMLDetailsElement).querySelectorAll("ol > li")];
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
}
