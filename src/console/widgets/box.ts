import type { Signs } from '../theme.ts';
import { fitHeight, fitLine, type Line, line, lineWidth } from './line.ts';

/** A titled part of a box, with how many lines it takes. */
export interface Section {
  readonly title: string;
  readonly lines: readonly Line[];
  readonly height: number;
}

/** A box of sections one under the other, each with its title in the rule above it. Height: the sections' + one rule each + the foot. */
export function box(sections: readonly Section[], width: number, signs: Signs): readonly Line[] {
  const inner = width - 2;
  const body = sections.flatMap((section, index) => [
    rule(
      section.title,
      inner,
      index === 0 ? [signs.topLeft, signs.topRight] : [signs.teeLeft, signs.teeRight],
      signs,
    ),
    ...fitHeight(section.lines, section.height).map(
      (each): Line => [
        { text: signs.down, tone: 'faint' },
        ...fitLine(each, inner, signs.ellipsis),
        { text: signs.down, tone: 'faint' },
      ],
    ),
  ]);
  const foot = line(`${signs.bottomLeft}${signs.across.repeat(inner)}${signs.bottomRight}`, 'faint');
  return [...body, foot];
}

function rule(title: string, inner: number, ends: readonly [string, string], signs: Signs): Line {
  const name: Line =
    title === ''
      ? []
      : fitLine(
          [{ text: ` ${title} `, tone: 'strong' }],
          Math.min(inner - 1, title.length + 2),
          signs.ellipsis,
        );
  const rest = Math.max(0, inner - 1 - lineWidth(name));
  return [
    { text: `${ends[0]}${signs.across}`, tone: 'faint' },
    ...name,
    { text: `${signs.across.repeat(rest)}${ends[1]}`, tone: 'faint' },
  ];
}

/** Columns of lines side by side, each padded to its width. */
export function beside(
  columns: readonly { readonly lines: readonly Line[]; readonly width: number }[],
): readonly Line[] {
  const height = Math.max(...columns.map((column) => column.lines.length));
  return Array.from({ length: height }, (_, row) =>
    columns.flatMap((column) => fitLine(column.lines[row] ?? [], column.width)),
  );
}
