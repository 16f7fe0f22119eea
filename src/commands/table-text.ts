import stringWidth from 'string-width';

/** Rows of cells as lines of text, each column as wide as its widest cell; numbers to the right. */
export function tableText(rows: readonly (readonly string[])[]): string {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, column) =>
    Math.max(...rows.map((row) => stringWidth(row[column] ?? ''))),
  );
  const numeric = widths.map((_, column) =>
    rows.slice(1).every((row) => /^[-\d.–]*$/.test(row[column] ?? '')),
  );
  return rows
    .map((row) =>
      row
        .map((cell, column) => {
          const gap = ' '.repeat((widths[column] ?? 0) - stringWidth(cell));
          return numeric[column] === true ? gap + cell : cell + gap;
        })
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
