/**
 * The bundle gives Ink this module as its output. A frame of ours is rows, each written once and whole at column 0, so they pass through as
 * they are; Ink's own output takes every row apart into styled cells and puts it together again at each key.
 */
export default class Rows {
  private readonly rows: string[];

  constructor({ height }: { readonly height: number }) {
    this.rows = Array.from({ length: height }, () => '');
  }

  /** Called by Ink for each text; one at another column is a bug of ours. */
  write(
    column: number,
    row: number,
    text: string,
    { transformers }: { readonly transformers: readonly ((text: string, index: number) => string)[] },
  ): void {
    if (column !== 0) throw new Error(`a row of the frame begins at column ${column}`);
    if (row < this.rows.length)
      this.rows[row] = transformers.reduce((made, transform) => transform(made, 0), text);
  }

  get(): { readonly output: string; readonly height: number } {
    return { output: this.rows.map((row) => row.trimEnd()).join('\n'), height: this.rows.length };
  }
}
