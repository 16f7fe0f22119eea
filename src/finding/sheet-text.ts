/** Records as CSV (RFC 4180, CRLF). A text that a spreadsheet would run is led by an apostrophe; numbers are written as numbers. */
export function csvText(records: readonly (readonly (string | number)[])[]): string {
  return records.map((record) => `${record.map(csvCell).join(',')}\r\n`).join('');
}

/**
 * What a spreadsheet takes for the start of a formula (or passes over before one), in its full width too. Apostrophes before it count as
 * part of it: so taking one apostrophe off such a cell always gives the text back.
 */
const RUN = /^'*[=+\-@\t\r\n＝＋－＠]/;

function csvCell(cell: string | number): string {
  if (typeof cell === 'number') return String(cell);
  const safe = RUN.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** A text for HTML: nothing in it can start a tag, an entity or end an attribute. */
export function htmlText(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}
