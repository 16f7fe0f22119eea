import { cellWidth, graphemes } from './cells.ts';

/** One character on the screen, its width in cells and its style (SGR parameters, in one fixed order; '' is plain). */
export interface Cell {
  readonly text: string;
  readonly width: number;
  readonly style: string;
}

/** One attribute a place: the SGR parameter that is on there, or ''. */
type Attributes = readonly [
  bold: string,
  dim: string,
  italic: string,
  underline: string,
  inverse: string,
  strike: string,
  ink: string,
  ground: string,
];

const plain: Attributes = ['', '', '', '', '', '', '', ''];

/** Which place an SGR parameter sets, and to what; ECMA-48 and xterm. */
const simple: Readonly<Record<string, readonly (readonly [place: number, value: string])[]>> = {
  '1': [[0, '1']],
  '2': [[1, '2']],
  '3': [[2, '3']],
  '4': [[3, '4']],
  '7': [[4, '7']],
  '9': [[5, '9']],
  '22': [
    [0, ''],
    [1, ''],
  ],
  '23': [[2, '']],
  '24': [[3, '']],
  '27': [[4, '']],
  '29': [[5, '']],
  '39': [[6, '']],
  '49': [[7, '']],
};

/** The attributes after one SGR sequence's parameters. Parameters we never send (blink, fonts) change nothing. */
function applied(attributes: Attributes, parameters: string): Attributes {
  const now: string[] = [...attributes];
  const codes = parameters.split(';');
  for (let index = 0; index < codes.length; index++) {
    const code = codes[index]!;
    if (code === '' || code === '0') now.splice(0, now.length, ...plain);
    for (const [place, value] of simple[code] ?? []) now[place] = value;
    if (/^(3|9)[0-7]$/.test(code)) now[6] = code;
    if (/^(4|10)[0-7]$/.test(code)) now[7] = code;
    if (code === '38' || code === '48') {
      const length = codes[index + 1] === '2' ? 5 : 3;
      now[code === '38' ? 6 : 7] = codes.slice(index, index + length).join(';');
      index += length - 1;
    }
  }
  return now as unknown as Attributes;
}

/** The cells of one line of a frame: text with SGR sequences in it, nothing else. The line begins and ends plain. */
export function styledCells(line: string): readonly Cell[] {
  const cells: Cell[] = [];
  let attributes = plain;
  // Odd parts are the parameters of the SGR sequences between the even ones.
  for (const [index, part] of line.split(/\x1b\[([\d;]*)m/).entries()) {
    if (index % 2 === 1) {
      attributes = applied(attributes, part);
      continue;
    }
    const style = attributes.filter((attribute) => attribute !== '').join(';');
    for (const text of graphemes(part)) cells.push({ text, width: cellWidth(text), style });
  }
  return cells;
}

/** The cells as text for the terminal: begins and ends plain. */
export function cellsToText(cells: readonly Cell[]): string {
  let text = '';
  let style = '';
  for (const cell of cells) {
    if (cell.style !== style) text += cell.style === '' ? '\x1b[0m' : `\x1b[0;${cell.style}m`;
    style = cell.style;
    text += cell.text;
  }
  return style === '' ? text : `${text}\x1b[0m`;
}
