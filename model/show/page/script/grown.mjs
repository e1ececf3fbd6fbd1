/** Words and tables that came as HTML, put into the page as elements of known kinds and as text; nothing else of it
 * comes in, and nothing in it runs: it is read as a document that belongs to no window. */

const TAGS = new Set(
  "B CAPTION DETAILS DIV FIGCAPTION FIGURE H1 LI OL P SMALL SPAN STRONG SUMMARY TABLE TBODY TD TFOOT TH THEAD TR UL path svg text".split(" "),
);
const NAMES = new Set(
  "aria-hidden aria-label class d data-finding data-mark fill fill-rule font-size role scope stroke stroke-width text-anchor viewBox x y".split(" "),
);

/** Puts it in place of what is there; lists that were open stay so. @param {HTMLElement} home @param {string} html */
export function put(home, html) {
  const name = (/** @type {Element} */ list) => list.querySelector("summary")?.firstChild?.textContent ?? "";
  const open = new Set([...home.querySelectorAll("details[open]")].map(name));
  const read = new DOMParser().parseFromString(html, "text/html");
  home.replaceChildren(...[...read.body.childNodes].flatMap(grown));
  for (const list of home.querySelectorAll("details")) list.open = open.has(name(list));
}

/** @param {Node} node @returns {Node[]} */
function grown(node) {
  if (node instanceof Text) return [document.createTextNode(node.data)];
  if (!(node instanceof Element) || !TAGS.has(node.tagName)) return [];
  const made = document.createElementNS(node.namespaceURI, node.localName);
  for (const { name, value } of node.attributes) if (NAMES.has(name)) made.setAttribute(name, value);
  made.append(...[...node.childNodes].flatMap(grown));
  return [made];
}
