import { type CodeSaid, newlyFound, withCode } from '../../schema/change/preview-change.ts';
import { CAUTION_KINDS, type LoggingSchema } from '../../schema/logging-schema.ts';
import type { CodeEntry } from '../../schema/read/file-entries.ts';
import type { Prompt } from '../prompt.ts';
import { type Shown, typedLine } from '../screens/shown.ts';
import type { State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { codeLists, readNewCode } from './new-code.ts';

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
            ...wrap(`${codeWords(read.value)}, provisional: camp is told of it.`, width, 'good'),
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
        `Code, pair and caution behind commas: talc schist, TSC, tk, fibre. Cautions: ${CAUTION_KINDS.join(', ')}`,
        width,
        'faint',
      ),
      ...outcome,
    ],
    foot: [
      typedLine(prompt.draft, theme),
      line('↑ ↓ another list. Enter adds it. Esc leaves all as it is.', 'faint'),
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
