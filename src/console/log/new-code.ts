import { cautionTyped } from '../../schema/cautions.ts';
import { type CodeSaid, newlyFound, withCode } from '../../schema/change/preview-change.ts';
import { proposeCode, proposePairs } from '../../schema/change/propose-pairs.ts';
import { CAUTION_KINDS, type CodeList, type LoggingSchema, listOf } from '../../schema/logging-schema.ts';
import type { CodeEntry } from '../../schema/read/file-entries.ts';
import { EMPTY_DRAFT } from '../draft.ts';
import type { Prompt } from '../prompt.ts';
import { type Shown, typedLine } from '../screens/shown.ts';
import type { State } from '../state.ts';
import { type Step, saying, still } from '../step.ts';
import type { Theme } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { codeInHand } from './codes-list.ts';

/** What was typed, as a code to add; or why it can't be. */
export type NewCode =
  | { readonly ok: true; readonly value: CodeEntry }
  | { readonly ok: false; readonly problem: string };

/** Lists that codes can be added to, in the order of the log sheet. */
export function codeLists(schema: LoggingSchema): readonly CodeList[] {
  return [...new Set(schema.fields.flatMap((field) => listOf(schema, field) ?? []))];
}

/**
 * Reads `talc schist`, `talc schist, TSC` or `talc schist, TSC, tk`: the label, the code, the pair. What is not typed is proposed:
 * three letters of the label, and a pair that stands apart from all that is typed already. A last part that is a kind of caution
 * (`open stope, void`) gives the code that caution.
 */
export function readNewCode(schema: LoggingSchema, list: CodeList, text: string): NewCode {
  const parts = text.split(',').map((part) => part.trim());
  const caution = parts.length > 1 ? cautionTyped(parts.at(-1) ?? '') : undefined;
  const [label = '', code = '', pair = '', ...more] = caution === undefined ? parts : parts.slice(0, -1);
  if (label === '') return { ok: false, problem: 'Type what it is called, like talc schist.' };
  if (more.length > 0)
    return {
      ok: false,
      problem: `A label, a code, a pair and a caution at most: talc schist, TSC, tk, fibre. A caution is one of ${CAUTION_KINDS.join(', ')}.`,
    };
  const known = list.codes.find((each) => each.label.toLowerCase() === label.toLowerCase());
  if (known !== undefined)
    return { ok: false, problem: `${known.label} is there already: ${known.pair ?? known.code}.` };
  const own = code === '' ? proposeCode(schema, label) : code;
  if (own === undefined)
    return { ok: false, problem: `No code is left by the usual rule. Type one of your own: ${label}, XYZ.` };
  const strokes = pair === '' ? proposedPair(schema, list, { code: own, label }) : pair;
  return {
    ok: true,
    value: {
      code: own,
      label,
      ...(strokes === undefined ? {} : { pair: strokes }),
      ...(caution === undefined ? {} : { caution }),
    },
  };
}

function proposedPair(
  schema: LoggingSchema,
  list: CodeList,
  added: { readonly code: string; readonly label: string },
): string | undefined {
  const codes = [...list.codes, { ...added, look: '' }];
  const lists = { ...schema.lists, [list.name]: { ...list, codes } };
  return proposePairs({ ...schema, lists }).find(
    (each) => each.list === list.name && each.code === added.code,
  )?.pair;
}

/** Asks for a code that the lists lack, in the list that is in hand. What is typed on the entry line stays there. */
export function askNewCode(state: State): Step {
  const list = codeInHand(state)?.list;
  const at = codeLists(state.project.schema).findIndex((each) => each.name === list);
  return still({
    ...state,
    prompt: { kind: 'new code', cursor: Math.max(0, at), draft: EMPTY_DRAFT, adding: false },
    message: undefined,
  });
}

/** Enter on a new code: it is written to logging.json, and stands once that is durable. */
export function addNewCode(state: State): Step {
  const { prompt } = state;
  if (prompt?.kind !== 'new code' || prompt.adding) return still(state);
  if (state.readOnly !== undefined)
    return still(saying(state, `Nothing is changed: ${state.readOnly}`, 'alert'));
  const list = codeLists(state.project.schema)[prompt.cursor];
  if (list === undefined) return still(saying(state, 'This project has no lists of codes.', 'warn'));
  const read = readNewCode(state.project.schema, list, prompt.draft.text);
  if (!read.ok) return still(saying(state, read.problem, 'warn'));
  return [
    { ...state, prompt: { ...prompt, adding: true }, message: undefined },
    [{ do: 'add code', list: list.name, entry: read.value }],
  ];
}

/** A code that the lists lack: its list, and as it is typed the code and the pair that it will get. */
export function newCodeShown(
  state: State,
  prompt: Extract<Prompt, { readonly kind: 'new code' }>,
  width: number,
  theme: Theme,
): Shown {
  const { schema } = state.project;
  const lists = codeLists(schema);
  const picked = lists[prompt.cursor];
  const read =
    picked === undefined || prompt.draft.text.trim() === ''
      ? undefined
      : readNewCode(schema, picked, prompt.draft.text);
  const outcome =
    read === undefined
      ? []
      : read.ok
        ? [
            ...wrap(`${codeWords(read.value)}, provisional: the letter to camp lists it.`, width, 'good'),
            ...(read.value.caution ? wrap(`CAUTION ${read.value.caution.words}`, width, 'alert') : []),
            ...checkLines(schema, picked?.name ?? '', read.value, width),
          ]
        : wrap(read.problem, width, 'warn');
  return {
    title: 'a code that the list lacks',
    lines: [
      spans([picked?.label ?? 'no list', 'picked'], `  list ${prompt.cursor + 1} of ${lists.length}`),
      line('What it is called, like: talc schist'),
      ...wrap(
        `Code, pair and caution after commas: talc schist, TSC, tk, fibre. Cautions: ${CAUTION_KINDS.join(', ')}`,
        width,
        'faint',
      ),
      ...outcome,
    ],
    foot: [
      typedLine(prompt.draft, theme),
      line('↑ ↓ another list. Enter adds it. Esc changes nothing.', 'faint'),
    ],
  };
}

/** What the check would find in the code, as it is typed; that it is provisional is said already. */
function checkLines(schema: LoggingSchema, list: string, entry: CodeEntry, width: number): readonly Line[] {
  const after = withCode(schema, list, entry.code, { ...(entry as CodeSaid), provisional: true });
  return newlyFound(schema, after)
    .filter(({ severity }) => severity !== 'note')
    .flatMap((each) =>
      wrap(`${each.severity}: ${each.problem}`, width, each.severity === 'fault' ? 'alert' : 'warn'),
    );
}

function codeWords({ code, label, pair }: CodeEntry): string {
  const typed = typeof pair === 'string' ? `typed ${pair}` : 'without a pair';
  return `${code} ${label ?? ''}, ${typed}`;
}
