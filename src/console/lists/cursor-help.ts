import { headerOf } from '../../hole/hole.ts';
import { formatInterval } from '../../quantity/interval.ts';
import type { Document } from '../../record/document.ts';
import { type Field, type LoggingSchema, listOf } from '../../schema/logging-schema.ts';
import { COMMANDS } from '../../shorthand/commands.ts';
import { parseLine } from '../../shorthand/parse.ts';
import type { Said } from '../../shorthand/said.ts';
import { cellWords } from '../../shorthand/words.ts';
import { surveyChecksOf } from '../../standing/survey.ts';
import { KEYS } from '../keys.ts';
import { entryContext, intervalInHand } from '../log/entry.ts';
import { optionsOf } from '../log/field-options.ts';
import { formFields } from '../log/fields.ts';
import { keyName } from '../screens/bottom.ts';
import { holeInHand, inOwn, type State } from '../state.ts';
import { shotDetail } from '../survey/survey-shots.ts';
import { type Line, line, wrap } from '../widgets/line.ts';
import { pickedHole } from './holes.ts';
import type { Listed, ListSection } from './listed.ts';

/** What the cursor is on, for the help that is asked there: the field of the form or column, the command or the row that is typed. */
export function cursorHelp(state: State, width: number): ListSection | undefined {
  const { screen, project } = state;
  const picked = pickedHole(state);
  if (picked !== undefined) return holeHelp(state, picked, width);
  const hole = holeInHand(state);
  if (hole === undefined) return undefined;
  if (screen.name === 'survey' && screen.view === 'shots') {
    const checks = surveyChecksOf(project, hole, state.documents.values());
    return section('this shot', indented(shotDetail(hole, checks, screen.cursor, width - 2)));
  }
  if (screen.name === 'fields') {
    const fields = formFields(state, hole);
    const field = fields[Math.min(screen.form.field, fields.length - 1)];
    return field === undefined ? undefined : fieldHelp(project.schema, field, width);
  }
  if (screen.name === 'readings') {
    const field = project.schema.fields.find(({ name }) => name === screen.field);
    return field === undefined ? undefined : fieldHelp(project.schema, field, width);
  }
  if (screen.name !== 'log') return undefined;
  return state.draft.text.startsWith(';') ? commandHelp(state, width) : rowHelp(state, width);
}

/** The item of a list that the cursor is on, whole; undefined in a list that only scrolls. */
export function pickedItem(list: Listed, cursor: number): ListSection | undefined {
  if (!list.sections.some(({ about }) => about !== undefined)) return undefined;
  const items = list.sections.flatMap(({ items: of }) => of);
  const item = items[Math.min(cursor, items.length - 1)];
  return item === undefined ? undefined : section(`this row: ${list.title}`, item);
}

/** A hole on the list: what its keys do in the state that it is in. */
function holeHelp(state: State, hole: Document, width: number): ListSection {
  const { name, state: standing } = headerOf(hole);
  const keys = KEYS.filter(
    ({ on, hindered }) =>
      on !== 'any' && on.includes('holes') && hindered !== undefined && hindered(state) === undefined,
  );
  const lines = keys.flatMap((each) =>
    wrap(`${each.keys.map(keyName).join(' or ')}: ${each.help}`, width - 2),
  );
  return section(`this hole: ${name}, ${standing}`, indented(lines));
}

const section = (title: string, lines: readonly Line[]): ListSection => ({
  head: [line(title, 'strong')],
  items: [...lines.map((each) => [each]), [line('')]],
});

function commandHelp(state: State, width: number): ListSection | undefined {
  const word = /^;([a-z-]*)/.exec(state.draft.text)?.[1];
  const command = COMMANDS.find((each) => each.word === word);
  const binding = KEYS.find((each) => each.word === word);
  const form = command?.form ?? (binding === undefined ? undefined : `;${word}`);
  const does = command?.does ?? binding?.help;
  if (form === undefined || does === undefined) return undefined;
  const lines = [...wrap(inOwn(state, form), width - 2, 'accent'), ...wrap(inOwn(state, does), width - 2)];
  return section(`the command that is typed: ;${word}`, indented(lines));
}

/** The row that is typed, item by item; or, where nothing is typed, the earlier row that is open or the one that comes next. */
function rowHelp(state: State, width: number): ListSection | undefined {
  const { screen, project } = state;
  const hole = holeInHand(state);
  if (screen.name !== 'log' || hole === undefined) return undefined;
  const at = formatInterval(intervalInHand(hole, screen.cursor));
  const parsed = parseLine(state.draft.text, entryContext(state, hole, screen.cursor));
  if (parsed.kind === 'refused')
    return section(
      `this row: ${at}`,
      indented([...wrap(parsed.problem, width - 2, 'warn'), ...wrap(parsed.remedy, width - 2)]),
    );
  if (parsed.kind !== 'row' || parsed.said.length === 0)
    return section(
      `this row: ${at}`,
      indented(
        wrap(
          'Type what changed since the row above; . where nothing did, nr where nothing came up.',
          width - 2,
        ),
      ),
    );
  const lines = parsed.said.flatMap((item) => itemLines(project.schema, item, width - 2));
  return section(`this row: ${at}`, indented(lines));
}

/** One typed item in words: its field, what it says, and what to look for in the chips. */
function itemLines(schema: LoggingSchema, { field, text, says }: Said, width: number): readonly Line[] {
  const code =
    'quality' in says
      ? says.quality
      : 'event' in says
        ? says.event
        : 'code' in says
          ? says.code
          : 'code' in says.cell
            ? says.cell.code
            : undefined;
  const list = 'quality' in says ? schema.lists[says.list] : listOf(schema, field);
  const known = list?.codes.find((each) => each.code === code);
  const words =
    known?.label ?? ('cell' in says ? cellWords(schema, field, says.cell).join(', ') : field.label);
  const look = known === undefined || known.look === '' ? '' : `. ${known.look}`;
  const caution =
    known?.caution === undefined
      ? []
      : wrap(`CAUTION ${known.label}: ${known.caution.words}`, width, 'alert');
  return [...caution, ...wrap(`${text}: ${field.label}, ${words}${look}`, width)];
}

/** A field: how it is typed, what it takes and what leaving it unsaid means. */
function fieldHelp(schema: LoggingSchema, field: Field, width: number): ListSection {
  const strokes =
    'pair' in field && field.pair !== undefined
      ? `${field.pair}${field.key === undefined ? '' : ` or ${field.key}`} with its amount, or ${field.name}'`
      : `${field.name}' with its value`;
  const caution =
    field.caution === undefined ? [] : wrap(`CAUTION ${field.caution.words}`, width - 2, 'alert');
  const unsaid = field.required
    ? 'Every first row has to say it.'
    : `Left unsaid in a first row: ${field.unsaid === 'none' ? 'none seen' : 'not observed'}.`;
  const carries = field.carry ? 'Left unsaid below, it is as in the row above.' : 'It never carries.';
  const takes = optionsOf(schema, field).flatMap((option) => [
    ...(option.caution === undefined
      ? []
      : wrap(`CAUTION ${option.label}: ${option.caution}`, width - 2, 'alert')),
    ...wrap(`${option.strokes}: ${option.label}${option.look === '' ? '' : `. ${option.look}`}`, width - 2),
  ]);
  return section(
    `this field: ${field.label}`,
    indented([
      ...caution,
      ...wrap(`Typed as ${strokes}. ${unsaid} ${carries}`, width - 2),
      ...amounts(field),
      ...takes,
    ]),
  );
}

function amounts(field: Field): readonly Line[] {
  if ('ladder' in field) {
    const trace = field.traceCountsAsPercent === undefined ? '' : '; , is a trace';
    return [line(`Percent, in steps of ${field.ladder.join(' ')}${trace}.`)];
  }
  if (field.kind === 'number') return [line(`A number in ${field.unit}, ${field.min} to ${field.max}.`)];
  return [];
}

function indented(lines: readonly Line[]): readonly Line[] {
  return lines.map((each) => [{ text: '  ' }, ...each]);
}
