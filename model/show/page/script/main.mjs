/** Begins: reads the building out of the page and shows it, or says why no picture can be drawn. */

import { building } from "./data.mjs";
import { fillFound, fillSeen } from "./filled.mjs";
import { shown, still, wait } from "./shown.mjs";

async function begin() {
  wait();
  const text = document.getElementById("data")?.textContent ?? "";
  const app = shown(await building(JSON.parse(text)));
  fillSeen(app);
  fillFound(app);
}

begin().catch((error) => {
  still("No picture can be drawn here.");
  if (!String(error).includes("WebGL2")) throw error;
});
