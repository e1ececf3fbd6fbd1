/** The lists beside the picture: sorted by a column, searched, and each row a way to light its pieces. */

/** Both texts' numbers as numbers, feet and inches as inches; text by text. @param {string} a @param {string} b */
export function order(a, b) {
  const [one, other] = [amount(a), amount(b)];
  if (Number.isNaN(one) || Number.isNaN(other)) return a.localeCompare(b, "en", { numeric: true });
  return one - other;
}

/** @param {string} text @returns {number} of a figure as the lists have it, NaN for other text */
export function amount(text) {
  const found = /^(?:([\d.]+)')?\s*(?:(\d+(?:\.\d+)?)?-?(?:(\d+)\/(\d+))?")?$/.exec(text.trim());
  if (found && text.trim()) {
    const [, feet = "0", inches = "0", part = "0", whole = "1"] = found;
    return 12 * Number(feet) + Number(inches) + Number(part) / Number(whole);
  }
  return text.trim() ? Number(text.replace(/ (mm|lb|kg|ft2|m2)$/, "")) : NaN;
}

/** Makes tables answer. @param {HTMLElement} home @param {(mark: string) => void} light */
export function listen(home, light) {
  for (const table of home.querySelectorAll("table")) {
    for (const [column, head] of [...table.tHead?.rows[0].cells ?? []].entries()) sortable(table, head, column);
    for (const row of table.tBodies[0].rows) pressable(row, light);
  }
}

/** @param {HTMLTableElement} table @param {HTMLTableCellElement} head @param {number} column */
function sortable(table, head, column) {
  const press = document.createElement("button");
  press.type = "button";
  press.textContent = head.textContent;
  head.replaceChildren(press);
  press.addEventListener("click", () => {
    const down = head.ariaSort === "ascending";
    for (const other of table.tHead?.rows[0].cells ?? []) other.removeAttribute("aria-sort");
    head.setAttribute("aria-sort", down ? "descending" : "ascending");
    const text = (/** @type {HTMLTableRowElement} */ row) => row.cells[column].textContent ?? "";
    const rows = [...table.tBodies[0].rows].sort((a, b) => (down ? -1 : 1) * order(text(a), text(b)));
    table.tBodies[0].append(...rows);
  });
}

/** @param {HTMLTableRowElement} row @param {(mark: string) => void} light */
function pressable(row, light) {
  const mark = row.dataset.mark ?? "";
  const press = document.createElement("button");
  press.type = "button";
  press.textContent = row.cells[0].textContent;
  press.setAttribute("aria-pressed", "false");
  row.cells[0].replaceChildren(press);
  row.addEventListener("click", () => light(mark));
}

/** Leaves the rows in which every word stands. @param {HTMLElement} home @param {string} text */
export function find(home, text) {
  const wanted = text.toLowerCase().split(/\s+/).filter(Boolean);
  for (const list of home.querySelectorAll("details")) {
    let left = 0;
    for (const row of list.querySelectorAll("tbody tr")) {
      const said = `${list.querySelector("summary")?.textContent} ${[...row.children].map((cell) => cell.textContent).join(" ")}`;
      const there = wanted.every((word) => said.toLowerCase().includes(word));
      row.toggleAttribute("hidden", !there);
      left += Number(there);
    }
    list.toggleAttribute("hidden", !left);
    if (wanted.length) list.open = left > 0;
  }
}

/** Shows which mark is lit, and returns its row. @param {HTMLElement} home @param {string} mark "" for none
 * @returns {HTMLTableRowElement | null} */
export function show(home, mark) {
  let found = null;
  for (const row of /** @type {NodeListOf<HTMLTableRowElement>} */ (home.querySelectorAll("tr[data-mark]"))) {
    const own = mark !== "" && row.dataset.mark === mark;
    row.classList.toggle("lit", own);
    row.cells[0].querySelector("button")?.setAttribute("aria-pressed", String(own));
    if (own) found = row;
  }
  return found;
}

/** What a row says, under the heads of its columns. @param {HTMLTableRowElement} row @returns {[string, string][]} */
export function said(row) {
  const heads = [...(row.closest("table")?.tHead?.rows[0].cells ?? [])].map((head) => head.textContent ?? "");
  return [...row.cells].map((cell, k) => /** @type {[string, string]} */ ([heads[k], cell.textContent ?? ""])).filter(([, text]) => text);
}
