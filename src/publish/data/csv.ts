// CSV as RFC 4180 writes it, with text cells that no spreadsheet takes for a formula. Numbers stay numbers.

export type CsvCell = string | number | null;

const looksNumeric = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/;

/** A text that a spreadsheet would run starts with an apostrophe; a number as text stays. Source: OWASP, CSV injection. */
export function safeText(text: string): string {
  return /^[\s\uFEFF]*[=+\-@\t\r＝＋－＠]/.test(text) && !looksNumeric.test(text) ? `'${text}` : text;
}

function cellText(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(Number(cell.toPrecision(12)) || 0) : '';
  const text = safeText(cell.replace(/\0/g, '\uFFFD'));
  return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replace(/"/g, '""')}"` : text;
}

/** Rows as CSV: commas, quotes where needed, CRLF at every end. */
export function csvText(head: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return [head, ...rows].map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}
