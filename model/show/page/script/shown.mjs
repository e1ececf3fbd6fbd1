/** A building on the screen, with all that steers it; or why no picture can be drawn. */

import { App } from "./app.mjs";
import { wire } from "./controls.mjs";
import { listen } from "./input.mjs";
import { part } from "./part.mjs";

/** @param {import("./data.mjs").Building} all @returns {App} */
export function shown(all) {
  const canvas = part("canvas", HTMLCanvasElement);
  wait();
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
  return app;
}

/** Makes room for a picture that is to come. */
export function wait() {
  document.body.classList.replace("still", "lively");
}

/** Leaves the page as it is without a picture. @param {string} why */
export function still(why) {
  document.body.classList.replace("lively", "still");
  part("no-picture", HTMLParagraphElement).textContent = `${why} Sizes, lists and findings are below.`;
}
