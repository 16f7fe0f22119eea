import { parseDepth } from '../../quantity/depth.ts';
import { minutesOf, type PlodContext, usedOf, wetSaid } from '../../shift/plod-line.ts';
import { minuteOfClock } from '../../shift/shift-clock.ts';
import { draftOf } from '../draft.ts';
import type { PlodForm, Prompt } from '../prompt.ts';

type PlodPrompt = Extract<Prompt, { readonly kind: 'plod' }>;

/** One field of a line of a plod: what it asks, and why what is typed in it can't be read; undefined where it can. */
interface PlodField {
  readonly name: string;
  readonly label: string;
  readonly hint: string;
  readonly fault: (typed: string, context: PlodContext) => string | undefined;
}

const depthFault = (typed: string): string | undefined =>
  parseDepth(typed) === undefined ? `${typed} is not a depth. Type metres, like 54.` : undefined;

/** The fields of a line, in the order in which they stand on most sheets. */
export const PLOD_FIELDS: readonly PlodField[] = [
  {
    name: 'from',
    label: 'from',
    hint: '06:00; empty: when the line above ended',
    fault: (typed) =>
      minuteOfClock(typed) === undefined ? `${typed} is not a time of day. Type 0600 or 6:00.` : undefined,
  },
  {
    name: 'to',
    label: 'to, or hours',
    hint: '07:30; or 1:30h where the sheet has no times',
    fault: (typed) =>
      minuteOfClock(typed) === undefined && minutesOf(typed) === undefined
        ? `${typed} is neither a time nor hours. Type 0730, or 1:30h.`
        : undefined,
  },
  {
    name: 'activity',
    label: 'activity',
    hint: 'its key or code, else as the sheet calls it',
    fault: () => undefined,
  },
  {
    name: 'hole',
    label: 'hole',
    hint: 'empty: the hole above, where there are metres or shots',
    fault: (typed, { holes }) =>
      holes.has(typed.toUpperCase())
        ? undefined
        : `${typed} is not a hole of this project. Read its name again.`,
  },
  { name: 'top', label: 'metres from', hint: 'empty: where the hole was left above', fault: depthFault },
  { name: 'foot', label: 'metres to', hint: '54', fault: depthFault },
  {
    name: 'shots',
    label: 'shots',
    hint: 'how many survey shots',
    fault: (typed) => (/^\d{1,3}$/.test(typed) ? undefined : `${typed} is not a number of shots. Type 2.`),
  },
  {
    name: 'beside',
    label: 'beside it',
    hint: 'booster: what ran beside it, paid by the hour',
    fault: (typed) =>
      typed.split(/[ ,]+/).every((each) => /^[a-z][a-z0-9-]*$/.test(each))
        ? undefined
        : `${typed} is not read. Type booster, in small letters.`,
  },
  {
    name: 'used',
    label: 'used',
    hint: '1 hammer bit, 2 subs',
    fault: (typed) =>
      usedOf(typed) === null ? `${typed} is not read. Type how many, then what.` : undefined,
  },
  {
    name: 'wet',
    label: 'wet',
    hint: 'y: all its metres; 60-66: some of them',
    fault: (typed) =>
      wetText(typed) === undefined ? `${typed} is not read. Type y, or metres like 60-66.` : undefined,
  },
  { name: 'remark', label: 'remark', hint: 'in words', fault: () => undefined },
];

/** `wet` or `wet60-66` for what is typed as wet metres; undefined where it can't be read. */
function wetText(typed: string): string | undefined {
  const text = /^y(es)?$/i.test(typed) ? 'wet' : `wet${typed}`;
  return typed !== '' && wetSaid(text) !== undefined ? text : undefined;
}

/** The line that the fields make: the same as one that is typed, and read by the same reader. */
export function formText({ values }: PlodForm, { activities }: Pick<PlodContext, 'activities'>): string {
  const value = (name: string): string => values[name] ?? '';
  const to = value('to');
  const times = minutesOf(to) === undefined ? (to === '' ? '' : `${value('from')}-${to}`) : to;
  const typed = value('activity');
  const isOurs = activities.some((each) => each.key === typed || each.code === typed.toLowerCase());
  const activity = typed === '' || isOurs ? typed : `'${typed.replaceAll("'", '')}'`;
  const metres = value('foot') === '' ? '' : `${value('top')}-${value('foot')}`;
  const beside =
    value('beside') === ''
      ? []
      : value('beside')
          .split(/[ ,]+/)
          .map((each) => `+${each}`);
  const parts = [
    times,
    activity,
    value('hole'),
    metres,
    wetText(value('wet')) ?? '',
    value('shots') === '' ? '' : `${value('shots')}sh`,
    ...beside,
    value('used') === '' ? '' : `used ${value('used')}`,
  ].filter((each) => each !== '');
  return `${parts.join(' ')}${value('remark') === '' ? '' : `: ${value('remark')}`}`;
}

/** The form of the next line, with nothing in it: below a line with its end the hand goes on at the end of this one. */
export function newForm(prompt: PlodPrompt): PlodPrompt {
  const field = prompt.lines.at(-1)?.line.endsAt === undefined ? 0 : 1;
  return { ...prompt, form: { field, values: {} }, draft: draftOf('') };
}

/** The form with what is typed put into its field; a field that is emptied loses what was in it. */
export function settledForm({ form, draft }: PlodPrompt): PlodForm | undefined {
  const name = form === undefined ? undefined : PLOD_FIELDS[form.field]?.name;
  if (form === undefined || name === undefined) return form;
  const { [name]: _, ...others } = form.values;
  const typed = draft.text.trim();
  return { ...form, values: typed === '' ? others : { ...others, [name]: typed } };
}

/** The prompt at another field, the first behind the last, what was typed there before in hand. */
export function atField(prompt: PlodPrompt, field: number): PlodPrompt {
  const form = settledForm(prompt);
  if (form === undefined) return prompt;
  const next = (field + PLOD_FIELDS.length) % PLOD_FIELDS.length;
  const text = form.values[PLOD_FIELDS[next]?.name ?? ''] ?? '';
  return { ...prompt, form: { ...form, field: next }, draft: draftOf(text) };
}

/** Why what is typed in the field in hand can't be read; undefined where it can, or nothing is typed. */
export function fieldFault({ form, draft }: PlodPrompt, context: PlodContext): string | undefined {
  const typed = draft.text.trim();
  return form === undefined || typed === '' ? undefined : PLOD_FIELDS[form.field]?.fault(typed, context);
}
