import { NOTE_DEEDS } from '../../acts/crew-note.ts';
import { PLOD_DEEDS } from '../../acts/plod.ts';
import { RECORD_FORMS } from '../../shift/record-line.ts';
import type { Prompt } from '../prompt.ts';
import { type Shown, typedLine } from '../screens/shown.ts';
import { inOwn, type State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';

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

/** Every form of what can be typed on the shift record, with what it does, in names of the project. */
export function shiftForms(state: State): readonly Form[] {
  const forms: readonly Form[] = [
    ...RECORD_FORMS,
    ['plod 0412 Mick Tarrant', 'type the driller’s sheet, line by line'],
    ...PLOD_DEEDS,
    ...NOTE_DEEDS,
  ];
  return forms.map(([form, does]) => [inOwn(state, form), inOwn(state, does)]);
}

/** A line of the shift record that is being typed, below its forms. */
export function lineShown(
  state: State,
  prompt: Extract<Prompt, { readonly kind: 'shift line' }>,
  width: number,
  theme: Theme,
): Shown {
  const { activities } = state.project.settings.shift;
  const all = shiftForms(state);
  const [word = ''] = prompt.draft.text.toLowerCase().split(' ');
  const meant = word === '' ? [] : all.filter(([form]) => form.startsWith(word));
  const forms = meant.length > 0 ? withWords(meant, width) : flowing(all, width);
  const open = (prompt.open ?? []).flatMap((each) => wrap(`${theme.signs.dash} ${each}`, width, 'warn'));
  if (open.length > 0)
    return {
      title: `shift record${prompt.shift === undefined ? '' : ` ${prompt.shift}`}`,
      lines: [line('The record of this shift leaves open:', 'strong'), ...open],
      foot: [
        typedLine(prompt.draft, theme),
        line('Enter ends the shift all the same. Esc goes back to record it first.', 'faint'),
      ],
    };
  const keys = wrap(`activities: ${activities.map((each) => `${each.key} ${each.code}`).join(', ')}`, width);
  return {
    title: `shift record${prompt.shift === undefined ? '' : ` ${prompt.shift}`}`,
    lines: [...keys, ...forms],
    foot: [typedLine(prompt.draft, theme), line('Enter records it. Esc changes nothing.', 'faint')],
  };
}

type Form = readonly [form: string, does: string];

/** Forms that begin as what is typed does, each with what it does. */
function withWords(forms: readonly Form[], width: number): readonly Line[] {
  const widest = Math.min(38, Math.max(...forms.map(([form]) => form.length)));
  return forms.map(([form, does]) => line(`${form.padEnd(widest)}  ${does}`.slice(0, width), 'faint'));
}

/** Every form, one behind the other, so that all of them fit on the smallest screen; one typed in part says what it does. */
function flowing(forms: readonly Form[], width: number): readonly Line[] {
  return wrap(forms.map(([form]) => form).join(' · '), width, 'faint');
}
