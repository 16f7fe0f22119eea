import { Box, Transform } from 'ink';
import { memo } from 'react';
import { safeText } from '../../finding/safe-text.ts';
import { type Theme, toned } from '../theme.ts';
import type { Line } from './line.ts';

/** A line as the terminal gets it: every text made safe first, then toned. The one place where data becomes a terminal's text. */
export function paintedLine(of: Line, theme: Theme): string {
  return of.map((span) => toned(safeText(span.text, theme), span.tone ?? 'plain', theme)).join('');
}

/**
 * A painted line; unchanged, it is not rendered again. It is put in when Ink has laid out one blank: our lines are fitted already, and Ink
 * would measure each text there ever was and keep it for good.
 */
const PaintedLine = memo(({ text }: { readonly text: string }) => (
  <Transform transform={() => text}> </Transform>
));

/** The whole screen: its lines, top to bottom, nothing else. */
export function Frame({ lines, theme }: { readonly lines: readonly Line[]; readonly theme: Theme }) {
  return (
    <Box flexDirection="column">
      {lines.map((each, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a screen line has no identity but its row
        <PaintedLine key={row} text={paintedLine(each, theme)} />
      ))}
    </Box>
  );
}
