/** Begins where the description is being written: what is shown comes over a line, and follows every save. */

import { building } from "./data.mjs";
import { fillFound, fillSeen } from "./filled.mjs";
import { put } from "./grown.mjs";
import { answer, offer } from "./offered.mjs";
import { part } from "./part.mjs";
import { shown, still, wait as stage } from "./shown.mjs";

/** @typedef {{line: number, key: string, read: string, remedy: string, text: string}} Problem */
/** @typedef {{file: string, folder: string, raising: boolean, problems: Problem[]}} State */

/** @type {import("./app.mjs").App | null} */
let app = null;
let pictures = true; // until it turns out that none can be drawn here
/** @type {State | null} */
let state = null;
let exporting = false;
let built = false; // whether any building came

/** @param {any} message */
async function told(message) {
  if (message.seen) await seen(message.seen);
  if (message.found) found(message.found, message.words);
  if (message.changed) answer(message.changed);
  if (message.state) state = message.state;
  if (message.exported) exported(message.exported);
  say();
}

/** A building raised. @param {any} content */
async function seen(content) {
  document.title = content.name;
  built = true;
  wait(true);
  if (!pictures) return;
  const all = await building(content, app?.all ?? null);
  try {
    if (app) app.turn(all);
    else offer((app = shown(all)), change);
    fillSeen(app);
  } catch (error) {
    if (!String(error).includes("WebGL2")) throw error;
    pictures = false;
    still("No picture can be drawn here.");
  }
}

/** What was found in it. @param {any} content @param {Record<string, string>} words */
function found({ steps, findings, edges }, words) {
  for (const [place, id] of PLACES) put(part(id, HTMLElement), words[place]);
  wait(false);
  if (!app) return;
  for (const piece of app.all.pieces) piece.step = steps[piece.number];
  Object.assign(app.all, { findings, edges });
  fillFound(app);
  app.relabel();
  app.told(app.picked.mark, app.picked.piece);
}

/** Where the words of a building stand: their name, the element. */
const PLACES = [
  ["head", "head"],
  ["glance", "glanced"],
  ["found", "found-count"],
  ["findings", "findings"],
  ["lists", "tables"],
  ["steps", "ordered"],
  ["elevations", "elevations"],
];

/** Keeps what was said of the building before from being taken for what is seen. @param {boolean} yes */
function wait(yes) {
  document.body.classList.toggle("waiting", yes);
  for (const id of ["glanced", "findings", "tables", "ordered"]) part(id, HTMLElement).inert = yes;
  for (const row of yes ? document.querySelectorAll("tr[data-mark]") : []) row.removeAttribute("data-mark");
}

function say() {
  if (!state) return;
  const { file, folder, raising, problems } = state;
  part("export-where", HTMLElement).textContent = `all that raise writes, to ${folder}`;
  part("export", HTMLButtonElement).disabled = exporting || raising || !built || problems.length > 0;
  const list = part("problems", HTMLOListElement);
  list.hidden = !problems.length;
  list.replaceChildren(...problems.map(problem));
  const kept = app ? " What is shown is the last that could be built." : "";
  part("desk-said", HTMLParagraphElement).textContent = problems.length
    ? `${file} cannot be built as it stands.${raising ? " Its new text is being raised." : kept}`
    : raising
      ? `${file} is being raised.`
      : `${file}, as it was saved last.`;
}

/** @param {{running: boolean, text: string, done: boolean}} news */
function exported({ running, text }) {
  exporting = running;
  const said = part("exported", HTMLPreElement);
  said.hidden = !running && !text;
  said.textContent = running ? "Being written." : text;
}

/** @param {Problem} one */
function problem({ line, key, read, remedy, text }) {
  const item = document.createElement("li");
  const where = document.createElement("b");
  where.textContent = [line ? `Line ${line}` : "", key].filter(Boolean).join(", ");
  const words = document.createElement("span");
  words.textContent = `${read ? `Read ${read}; ` : ""}${remedy}`;
  const typed = document.createElement("code");
  typed.textContent = text;
  item.append(...(where.textContent ? [where] : []), ...(text ? [typed] : []), words);
  return item;
}

/** Asks for another value. @type {import("./offered.mjs").Ask} */
function change(digest, field, typed) {
  line.send(JSON.stringify({ change: { digest, field, typed } }));
}

const line = new WebSocket(`ws://${globalThis.location.host}/line`);

function begin() {
  stage();
  let turn = Promise.resolve();
  part("export", HTMLButtonElement).addEventListener("click", () => line.send(JSON.stringify({ export: true })));
  line.addEventListener("open", () => line.send(globalThis.location.hash.slice(1)));
  line.addEventListener("message", ({ data }) => {
    turn = turn.then(() => told(JSON.parse(data)));
  });
  line.addEventListener("close", ({ code }) => {
    part("desk-said", HTMLParagraphElement).textContent =
      code === 1008
        ? "This address lacks its end: open the one that ribwright printed."
        : "ribwright has ended; what is shown stays. Start it again for a new page.";
  });
}

begin();
