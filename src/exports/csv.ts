/** Tables as text for spreadsheets: RFC 4180, with a byte order mark so that letters beyond ASCII survive. */

export type Cell = string | number;

const BOM = '\ufeff';
/** A spreadsheet takes a cell that begins with one of these for a formula; their wide forms count too. */
const FORMULA = /^\s*[=+\-@\uff0b\uff0d\uff1d\uff20]|^[\t\r\n]/;

/** Lines end in CR LF, the last one too. Numbers stand as they are, decimals behind a point; text that looks like a formula is marked. */
export function csv(rows: readonly (readonly Cell[])[]): string {
  return BOM + rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}
function cellText(cell: Cell): string {
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) throw new Error(`${cell} cannot stand in a table.`);
    return String(Object.is(cell, -0) ? 0 : cell);
  }
  const safe = FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
