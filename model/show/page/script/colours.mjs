/** Colours tried live, and the lines of the description that ask for them. */

/** @typedef {import("./data.mjs").Paint} Paint */

/** @param {string} hex @returns {[number, number, number]} 0 to 255 */
export function rgb(hex) {
  const code = parseInt(hex.slice(1), 16);
  return [code >> 16, (code >> 8) & 255, code & 255];
}

/** The lines that ask for what is tried, table by table, with those that stay: a colour that is not said follows
 * another. Empty for what was built. @param {Paint[]} paints @param {string[]} tried hexes */
export function lines(paints, tried) {
  if (paints.every(({ hex }, k) => tried[k] === hex)) return "";
  /** @type {Map<string, string[]>} */
  const tables = new Map();
  for (const [k, { part, name, hex, typed, table, key }] of paints.entries()) {
    const line = table ? `${key} = "${tried[k] === hex ? typed : tried[k]}"` : `# ${part}, now ${name}: ${tried[k]}`;
    tables.set(table, [...(tables.get(table) ?? []), line]);
  }
  return [...tables].map(([table, own]) => [...(table ? [`[${table}]`] : []), ...own].join("\n")).join("\n\n");
}

/** A field for each colour. @param {HTMLElement} home @param {Paint[]} paints @param {() => void} changed
 * @returns {HTMLInputElement[]} */
export function fields(home, paints, changed) {
  return paints.map(({ part, name, hex }) => {
    const label = document.createElement("label");
    const field = document.createElement("input");
    field.type = "color";
    field.value = hex;
    field.addEventListener("input", changed);
    const word = document.createElement("span");
    word.textContent = `${part[0].toUpperCase()}${part.slice(1)}, ${name}`;
    label.append(field, word);
    home.append(label);
    return field;
  });
}
