/** Parts of the page by their names. */

/** @template {HTMLElement} T @param {string} id @param {new () => T} kind @returns {T} */
export function part(id, kind) {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`no ${id}`);
  return found;
}
