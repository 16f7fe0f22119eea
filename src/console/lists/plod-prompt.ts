import { plodContext, plodGap } from '../../acts/plod.ts';
import { PLOD_FORMS } from '../../shift/plod-line.ts';
import { lineText } from '../../shift/plod-text.ts';
import type { Prompt } from '../prompt.ts';
import { draftSpans, type Shown, typedLine } from '../screens/shown.ts';
import { inOwn, type State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { line, spans, wrap } from '../widgets/line.ts';
import { PLOD_FIELDS } from './plod-form.ts';

/** Lines of the sheet that are on the screen at once: the latest. */
const LATEST = 7;

/** A plod that is being typed: its latest lines as they were read, how they make the shift, the forms of a line. */
export function plodShown(
  state: State,
  prompt: Extract<Prompt, { readonly kind: 'plod' }>,
  width: number,
  theme: Theme,
): Shown {
  const shift = state.documents.get(`shift/${prompt.shift}`);
  const lines = prompt.lines.map((each) => each.line);
  const documents = [...state.documents.values()];
  const gap =
    shift === undefined
      ? undefined
      : plodGap(lines, plodContext(state.project, documents, shift, lines, state.now));
  const read = lines.map((each, index) =>
    line(`${String(index + 1).padStart(2)}  ${lineText(each)}`.slice(0, width)),
  );
  const activities = state.project.shift.activities.map((each) => `${each.key} ${each.code}`).join(', ');
  const forms = PLOD_FORMS.map(([written, does]) => [inOwn(state, written), does] as const).map(
    ([form, does]) => line(`${form.padEnd(31)}  ${does}`.slice(0, width), 'faint'),
  );
  if (prompt.form !== undefined) return formShown(state, prompt, gap, width, theme);
  const { crew, remark } = prompt.part;
  const whole = [
    ...(crew === undefined ? [] : [`crew ${crew.join(', ')}`]),
    ...(remark === undefined ? [] : [remark]),
  ].join(' · ');
  return {
    title: `plod ${prompt.sheet} of ${prompt.shift}${prompt.from === undefined ? '' : `, from ${prompt.from}`}`,
    lines: [
      ...(whole === '' ? [] : [line(whole.slice(0, width))]),
      ...read.slice(-LATEST),
      line(gap ?? 'The lines make the shift.', gap === undefined ? 'good' : 'warn'),
      ...wrap(activities, width, 'faint'),
      ...(lines.length < 3 ? forms : []),
    ],
    foot: [
      typedLine(prompt.draft, theme),
      line(
        'Enter takes the line; an empty one records the sheet. Tab form. ↑ last line.'.slice(0, width),
        'faint',
      ),
    ],
  };
}

/** The next line field by field, under the last one of the sheet. */
function formShown(
  state: State,
  prompt: Extract<Prompt, { readonly kind: 'plod' }>,
  gap: string | undefined,
  width: number,
  theme: Theme,
): Shown {
  const { field: inHand, values } = prompt.form ?? { field: 0, values: {} };
  const last = prompt.lines.at(-1);
  const activities = state.project.shift.activities.map((each) => `${each.key} ${each.code}`).join(', ');
  const fields = PLOD_FIELDS.map(({ name, label, hint }, index) => {
    const here = index === inHand;
    const mark = here ? theme.signs.cursor : ' ';
    const head = ` ${label.padEnd(12)} `;
    if (here)
      return [
        ...spans([mark, 'accent'], head),
        ...draftSpans(prompt.draft),
        ...spans([`  ${hint}`, 'faint']),
      ];
    return line(`${mark}${head}${values[name] ?? ''}`.slice(0, width));
  });
  return {
    title: `plod ${prompt.sheet} of ${prompt.shift}, line ${prompt.lines.length + 1}`,
    lines: [
      ...(last === undefined ? [] : [line(`above: ${lineText(last.line)}`.slice(0, width), 'faint')]),
      ...fields,
      ...(inHand === ACTIVITY ? wrap(activities, width, 'faint') : []),
      line((gap ?? 'The lines make the shift.').slice(0, width), gap === undefined ? 'good' : 'warn'),
    ],
    foot: [
      line(
        'Enter goes on, F4 takes the line. Tab ↑ ↓ other fields. Esc back to lines.'.slice(0, width),
        'faint',
      ),
    ],
  };
}

const ACTIVITY = PLOD_FIELDS.findIndex(({ name }) => name === 'activity');
