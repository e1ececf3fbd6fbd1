/** Begins: reads the building out of the page and shows it, or says why no picture can be drawn. */

import { App } from "./app.mjs";
import { part, wire } from "./controls.mjs";
import { building } from "./data.mjs";
import { listen } from "./input.mjs";

async function begin() {
  const text = document.getElementById("data")?.textContent ?? "";
  const all = await building(JSON.parse(text));
  const canvas = part("canvas", HTMLCanvasElement);
  document.body.classList.replace("still", "lively");
  const overlay = part("overlay", HTMLDivElement);
  const app = new App(all, canvas, overlay);

  wire(app);
  listen(canvas, {
    turn: (x, y) => app.steer("turn", x, y),
    move: (x, y) => app.steer("move", x, y),
    near: (factor) => app.steer("near", factor),
    pick: (x, y) => app.pick(x, y),
    view: (number) => app.view(number),
    away: () => app.light(""),
    moving: (yes) => {
      app.moving = yes;
      app.draw();
    },
  });
  canvas.addEventListener("webglcontextlost", () => still("The picture was lost by this device."));
  Object.assign(globalThis, { ribwright: app }); // for whoever wants to ask it from the browser's console
}

/** Leaves the page as it is without a picture. @param {string} why */
function still(why) {
  document.body.classList.replace("lively", "still");
  part("no-picture", HTMLParagraphElement).textContent = `${why} Sizes, lists and findings are below.`;
}

begin().catch((error) => {
  still("No picture can be drawn here.");
  if (!String(error).includes("WebGL2")) throw error;
});
