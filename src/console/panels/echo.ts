import { explain, type Segment } from '../../shorthand/explain.ts';
import { type EntryContext, parseLine } from '../../shorthand/parse.ts';
import type { Theme, Tone } from '../theme.ts';
import { type Line, line, spans } from '../widgets/line.ts';

/** The two lines above the entry line: what the line changes, in words, and what it leaves as above. */
export function echoLines(text: string, context: EntryContext, theme: Theme): readonly [Line, Line] {
  const parsed = parseLine(text, context);
  switch (parsed.kind) {
    case 'row': {
      const segments = explain(parsed.row, context);
      return [changes(segments, theme), carried(segments)];
    }
    case 'refused': {
      const suggestions = parsed.suggestions.map((each) => `${each.text} ${each.label}`).join(', ');
      return [
        line(`${parsed.problem}. ${parsed.remedy}`, 'warn'),
        line(suggestions === '' ? '' : `could be: ${suggestions}`, 'faint'),
      ];
    }
    case 'bag':
      return [line(`bag ${parsed.number}: Enter checks it`, 'accent'), []];
    case 'command':
    case 'range':
      return [
        line(
          parsed.kind === 'range' ? 'a range: Enter shows what it would change' : `;${parsed.word}`,
          'accent',
        ),
        [],
      ];
    default:
      return [line('', 'faint'), []];
  }
}

const TONES: { readonly [kind in Segment['kind']]: Tone } = {
  up: 'strong',
  down: 'strong',
  new: 'strong',
  gone: 'strong',
  note: 'accent',
  same: 'faint',
};

function changes(segments: readonly Segment[], theme: Theme): Line {
  const changed = segments.filter((segment) => segment.kind !== 'same');
  if (changed.length === 0) return line('no change', 'faint');
  const between = theme.ascii ? ' - ' : ' · ';
  return spans(
    ...changed.flatMap((segment, index): readonly (readonly [string, Tone])[] => [
      ...(index === 0 ? [] : [[between, 'faint'] as const]),
      [segment.text, TONES[segment.kind]] as const,
    ]),
  );
}

function carried(segments: readonly Segment[]): Line {
  const same = segments.filter((segment) => segment.kind === 'same');
  return same.length === 0
    ? []
    : line(`as above: ${same.map((segment) => segment.text).join(', ')}`, 'faint');
}
