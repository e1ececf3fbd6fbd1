/** What of the description belongs to what was picked, to be changed there. */

import { part } from "./part.mjs";

/** @typedef {{name: string, words: string, help: string, typed: string, usual: string, choices: string[]}} Field */
/** @typedef {(digest: string, field: number, typed: string) => void} Ask */
/** @typedef {HTMLInputElement | HTMLSelectElement} Control */

/** From now on the card has fields. @param {import("./app.mjs").App} app @param {Ask} ask */
export function offer(app, ask) {
  const home = part("offered", HTMLDivElement);
  const told = app.told;
  app.told = (mark, piece) => {
    told(mark, piece);
    const { fields = [], offers = [], offer = [], digest = "" } = app.all;
    const numbers = mark ? offers[offer[piece ?? [...app.lit][0]]] ?? [] : [];
    fill(home, numbers.map((number) => ({ ...fields[number], ask: (typed) => ask(digest, number, typed) })));
  };
}

/** Says whether what was asked was done. @param {{why: string}} changed */
export function answer({ why }) {
  part("offered-said", HTMLParagraphElement).textContent = why;
}

/** What somebody is typing stays. @param {HTMLElement} home @param {(Field & {ask: (typed: string) => void})[]} fields */
function fill(home, fields) {
  const held = /** @type {Control | null} */ (home.contains(document.activeElement) ? document.activeElement : null);
  home.replaceChildren();
  for (const field of fields) {
    const control = field.choices.length ? chosen(field) : written(field);
    control.name = field.name;
    control.value = field.typed;
    control.title = field.help;
    control.dataset.typed = field.typed;
    control.addEventListener("change", () => field.ask(control.value));
    const label = document.createElement("label");
    const name = document.createElement("span");
    name.textContent = field.words;
    label.append(name, control);
    home.append(label);
    if (held?.name !== field.name) continue;
    if (held.value !== held.dataset.typed) control.value = held.value;
    control.focus();
  }
}

/** @param {Field} field */
function written({ usual }) {
  const control = document.createElement("input");
  control.type = "text";
  control.placeholder = usual;
  control.maxLength = 200;
  control.autocomplete = "off";
  control.spellcheck = false;
  return control;
}

/** @param {Field} field */
function chosen({ usual, typed, choices }) {
  const control = document.createElement("select");
  const words = choices.includes(typed) || !typed ? choices : [typed, ...choices];
  for (const word of [...(usual ? [""] : []), ...words]) {
    const option = document.createElement("option");
    option.value = word;
    option.textContent = word || `not said: ${usual}`;
    control.append(option);
  }
  return control;
}
