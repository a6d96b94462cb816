/** Rows of a CSV file (RFC 4180), as this program writes them. */

/**
 * One line, ended. Text that a spreadsheet would take for a formula gets an apostrophe before it, so that a
 * label from a foreign case cannot run anything.
 */
export function csvLine(cells: readonly (string | number | null)[]): string {
  return `${cells.map(cell).join(',')}\r\n`;
}

function cell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const formula = /^[=+\-@\t\r]/.test(value) && Number.isNaN(Number(value));
  const safe = formula ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** The complete lines of a CSV text as cells; a last line that was cut off before its end is left out. */
export function csvRows(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let value = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i]!;
    if (quoted) {
      if (c !== '"') value += c;
      else if (text[i + 1] === '"') {
        value += '"';
        i++;
      } else quoted = false;
    } else if (c === '"') quoted = true;
    else if (c === ',') {
      row.push(value);
      value = '';
    } else if (c === '\n') {
      row.push(value.replace(/\r$/, ''));
      rows.push(row);
      row = [];
      value = '';
    } else value += c;
  }
  return rows;
}
