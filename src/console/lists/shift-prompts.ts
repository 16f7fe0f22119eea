import { NOTE_DEEDS } from '../../acts/crew-note.ts';
import { PLOD_DEEDS } from '../../acts/plod.ts';
import { RECORD_FORMS } from '../../shift/record-line.ts';
import type { Prompt } from '../prompt.ts';
import { type Shown, typedLine } from '../screens/shown.ts';
import { inOwn, type State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { line, spans } from '../widgets/line.ts';

/** The switcher: every activity with the key that picks it and what it is charged by. */
export function activityShown(
  state: State,
  { cursor }: Extract<Prompt, { readonly kind: 'activity' }>,
  _width: number,
  theme: Theme,
): Shown {
  const lines = state.project.settings.shift.activities.map((each, index) =>
    spans([
      `${index === cursor ? theme.signs.cursor : ' '} ${each.key}  ${each.label}  (${each.charge})`,
      index === cursor ? 'picked' : 'plain',
    ]),
  );
  return {
    title: 'what does the rig do now',
    lines,
    foot: [line('Its key starts it now. Or ↑ ↓ and Enter. Esc changes nothing.', 'faint')],
  };
}

/** A line of the shift record that is being typed, below its forms. */
export function lineShown(
  state: State,
  prompt: Extract<Prompt, { readonly kind: 'shift line' }>,
  width: number,
  theme: Theme,
): Shown {
  const { activities } = state.project.settings.shift;
  const widest = Math.min(38, Math.max(...RECORD_FORMS.map(([form]) => form.length)));
  const all = [
    ...RECORD_FORMS,
    [inOwn(state, 'plod 0412 Mick Tarrant'), 'type the driller’s sheet, line by line'] as const,
    ...PLOD_DEEDS,
    ...NOTE_DEEDS,
  ];
  const forms = all.map(([form, does]) => line(`${form.padEnd(widest)}  ${does}`.slice(0, width), 'faint'));
  const keys = line(
    `activities: ${activities.map((each) => `${each.key} ${each.code}`).join(', ')}`.slice(0, width),
  );
  return {
    title: `shift record${prompt.shift === undefined ? '' : ` ${prompt.shift}`}`,
    lines: [keys, ...forms],
    foot: [typedLine(prompt.draft, theme), line('Enter records it. Esc changes nothing.', 'faint')],
  };
}
