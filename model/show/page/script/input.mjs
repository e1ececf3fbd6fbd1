/** Mouse, touch and keys on the picture, as turns, moves and picks. */

/** @typedef {{turn: (x: number, y: number) => void, move: (x: number, y: number) => void,
 *   near: (factor: number) => void, pick: (x: number, y: number) => void, view: (number: number) => void,
 *   away: () => void, moving: (yes: boolean) => void}} Does x, y: shares of the picture's height; of a pick, -1 to 1 */

const STILL = 5; // pixels that a finger may slip in a tap
const STEP = 0.12;

/** @param {HTMLElement} on @param {Does} does */
export function listen(on, does) {
  /** @type {Map<number, PointerEvent>} */
  const down = new Map();
  let slipped = 0;
  const share = (/** @type {number} */ pixels) => pixels / on.clientHeight;
  on.addEventListener("contextmenu", (event) => event.preventDefault());
  on.addEventListener("pointerdown", (event) => {
    if (!down.size) slipped = 0;
    down.set(event.pointerId, event);
    on.setPointerCapture(event.pointerId);
    on.focus({ preventScroll: true });
  });
  on.addEventListener("pointermove", (event) => {
    const before = down.get(event.pointerId);
    if (!before) return;
    const [x, y] = [event.clientX - before.clientX, event.clientY - before.clientY];
    slipped += Math.abs(x) + Math.abs(y);
    if (slipped <= STILL) return;
    does.moving(true);
    const other = [...down.values()].find(({ pointerId }) => pointerId !== event.pointerId);
    if (other) {
      const size = (/** @type {PointerEvent} */ e) => Math.hypot(e.clientX - other.clientX, e.clientY - other.clientY);
      does.near(size(before) / Math.max(1, size(event)));
      does.move(-share(x) / 2, share(y) / 2);
    } else if (event.shiftKey || event.buttons & 6) {
      does.move(-share(x), share(y));
    } else {
      does.turn(-2.5 * share(x), 2.5 * share(y));
    }
    down.set(event.pointerId, event);
  });
  const up = (/** @type {PointerEvent} */ event) => {
    if (!down.delete(event.pointerId)) return;
    if (event.type === "pointerup" && slipped <= STILL && event.button === 0) {
      const box = on.getBoundingClientRect();
      does.pick((2 * (event.clientX - box.left)) / box.width - 1, 1 - (2 * (event.clientY - box.top)) / box.height);
    }
    if (!down.size) does.moving(false);
  };
  on.addEventListener("pointerup", up);
  on.addEventListener("pointercancel", up);
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let rest;
  on.addEventListener(
    "wheel",
    (event) => {
      event.preventDefault();
      does.moving(true);
      does.near(Math.exp(Math.max(-0.5, Math.min(0.5, event.deltaY * (event.deltaMode ? 0.04 : 0.0015)))));
      clearTimeout(rest);
      rest = setTimeout(() => does.moving(false), 200);
    },
    { passive: false },
  );
  on.addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey || event.altKey) && key(event, does)) event.preventDefault();
  });
}

/** @param {KeyboardEvent} event @param {Does} does @returns {boolean} whether the key means something here */
function key(event, does) {
  const arrow = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
  if (arrow) {
    if (event.shiftKey) does.move(arrow[0] * STEP * 0.4, arrow[1] * STEP * 0.4);
    else does.turn(arrow[0] * STEP, arrow[1] * STEP);
  } else if (event.key === "+" || event.key === "=") does.near(0.85);
  else if (event.key === "-") does.near(1 / 0.85);
  else if (event.key === "Escape") does.away();
  else if (event.key === "Enter" || event.key === " ") does.pick(0, 0);
  else if (/^[1-7]$/.test(event.key)) does.view(Number(event.key) - 1);
  else return false;
  return true;
}
