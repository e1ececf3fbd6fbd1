/** Lengths for people, as the lists have them. */

const INCH = 25.4;

/** @param {number} mm @param {string} units "mm" or "ft-in"
 * @returns {string} `9' 2-1/2"` to the nearest 1/16 in, or whole millimetres with their unit */
export function length(mm, units) {
  if (units === "mm") return `${Math.round(mm)} mm`;
  const all = Math.round((Math.abs(mm) * 16) / INCH);
  const feet = Math.floor(all / 192);
  const inches = Math.floor((all % 192) / 16);
  let part = all % 16;
  let whole = 16;
  while (part && part % 2 === 0) [part, whole] = [part / 2, whole / 2];
  const fraction = part ? `${part}/${whole}` : "";
  if (feet && !inches && !part) return `${feet}'`;
  const small = [inches || feet || !part ? String(inches) : "", fraction].filter(Boolean).join("-");
  return feet ? `${feet}' ${small}"` : `${small}"`;
}
