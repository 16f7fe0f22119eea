import { Box, Text } from 'ink';
import type { ReactElement } from 'react';
import { padEnd, truncate } from '../../../src/console/terminal/paint/cells.ts';
import type { Size } from '../../../src/console/terminal/paint/painter.ts';
import { safeText } from '../../../src/finding/safe-text.ts';

/** What the fixture shows. */
export interface FixtureState {
  /** What has been typed since the last Enter. */
  readonly line: string;
  /** Everything that was done, newest last: entered lines, chords, pastes. */
  readonly done: readonly string[];
  readonly broken: boolean;
}

/** A piece of a line in one of the 256 colours. */
const coloured = (colour: number, text: string) => `\x1b[38;5;${colour}m${text}\x1b[39m`;

/** One table row: two bordered panels with eight coloured pieces, as full as a row of the log screen. */
function tableRow(index: number, done: string | undefined, columns: number): string {
  const from = String(index).padStart(4);
  const to = String(index + 1).padStart(4);
  const rock = `${coloured(34 + index, 'bst')}   ${coloured(70, 'frs')}   ${coloured(108, 'chl2 sil1')}   ${coloured(220, `pyr${index % 5}`)}`;
  const left = `│ ${from} ${to}  ${rock}   ${coloured(250, `${index % 9}%`)}`;
  const right = padEnd(truncate(safeText(done ?? ''), columns - 58), columns - 58);
  return `${left}       ││ ${coloured(80, right)} │`;
}

/** A full screen of `frame.rows` lines: a heading, rows, and the entry line at the bottom. One `<Text>` a line. */
export function FixtureScreen({
  state,
  frame,
}: {
  readonly state: FixtureState;
  readonly frame: Size;
}): ReactElement {
  if (state.broken) throw new Error('the fixture was told to break');
  const count = frame.rows - 2;
  const latest = state.done.slice(-count);
  const rows = Array.from({ length: count }, (_, index) => tableRow(index, latest[index], frame.columns));
  const heading = `\x1b[1mfixture ${frame.columns}×${frame.rows}\x1b[22m`;
  const lines = [heading, ...rows, ` entry ▸ ${safeText(state.line)}▌`];
  return (
    <Box flexDirection="column" width={frame.columns} height={frame.rows}>
      {lines.map((line, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place on the screen
        <Text key={index} wrap="truncate">
          {line}
        </Text>
      ))}
    </Box>
  );
}
