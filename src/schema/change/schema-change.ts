import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import {
  changeAdded,
  changeCodeGone,
  changeCodeMeaning,
  changeField,
  changeFieldGone,
  changeLevelMeaning,
  changeStrokesDropped,
  changeStrokesShifted,
} from '../findings.ts';
import {
  allMeanings,
  type CodeMeaning,
  type FieldMeaning,
  type Meanings,
  type ScaleMeaning,
} from '../legend.ts';
import type { LoggingSchema } from '../logging-schema.ts';
import { strokesOf } from '../strokes.ts';
import { type ShiftedStroke, shiftedStrokes } from './frozen-strokes.ts';

const GIVE_BACK =
  'Give it back as it was. If something else is meant, add a new code and retire the old one.';

/** What rows may hold of a schema. */
export type Held =
  | { readonly field: string }
  | { readonly list: string; readonly code: string }
  | { readonly scale: string; readonly level: number };

/** Says which rows hold something (`3 rows, the first 4–5`); undefined where none do or no one looked. */
export type Holding = (held: Held) => string | undefined;

/**
 * What a schema changes for rows that were logged with `logged` (a hole's legend, or all that the schema before it meant):
 * what they would mean now, and strokes whose meaning has shifted. A fault means: don't log on with it.
 */
export function changesUnder(
  logged: Meanings,
  schema: LoggingSchema,
  place: Place = {},
  holding: Holding = () => undefined,
): readonly Finding[] {
  const now = allMeanings(schema);
  return [
    ...Object.entries(logged.fields).flatMap(([name, field]) => [
      ...fieldChange(name, field, now.fields[name], place, holding),
      ...strokesDropped(field, now.fields[name], schema, { ...place, field: name }),
    ]),
    ...Object.entries(logged.scales).flatMap(([name, scale]) =>
      scaleChange(name, scale, now.scales[name], place, holding),
    ),
    ...Object.entries(logged.codes).flatMap(([name, code]) => [
      ...codeChange(code, now.codes[name], place, holding),
      ...strokesDropped(code, now.codes[name], schema, codePlace(code, place)),
    ]),
    ...shiftedStrokes(logged, schema).map((shifted) => strokesShifted(shifted, place)),
  ];
}

/** The end of a problem: what the rows that hold it would mean now. */
function rowsWould(rows: string | undefined, mean: string): string {
  return rows === undefined ? '' : `: ${rows}, would ${mean}`;
}

/** What a schema has that the one before it had not, as notes. */
export function additionsTo(
  before: LoggingSchema,
  after: LoggingSchema,
  place: Place = {},
): readonly Finding[] {
  const old = allMeanings(before);
  const now = allMeanings(after);
  const fresh = (kind: string, was: object, is: { readonly [name: string]: { readonly label: string } }) =>
    Object.entries(is)
      .filter(([name]) => !Object.hasOwn(was, name))
      .map(([name, { label }]) =>
        changeAdded.at(
          { ...place, thing: `${kind} ${name}` },
          { problem: `${label} is new`, remedy: 'Nothing to do: rows logged before could not say it.' },
        ),
      );
  return [
    ...fresh('field', old.fields, now.fields),
    ...fresh('scale', old.scales, now.scales),
    ...fresh('code', old.codes, now.codes),
  ];
}

function fieldChange(
  name: string,
  was: FieldMeaning,
  is: FieldMeaning | undefined,
  place: Place,
  holding: Holding,
): readonly Finding[] {
  const at = { ...place, field: name };
  const rows = holding({ field: name });
  if (is === undefined)
    return [
      changeFieldGone.at(at, {
        problem: `${was.label} is no longer on the log sheet${rowsWould(rows, 'keep it, and decode by the legend alone')}`,
        remedy: 'Old rows keep it. Put it back if it should go on.',
      }),
    ];
  const changed = (['kind', 'unit', 'list', 'scale'] as const).filter((member) => was[member] !== is[member]);
  return changed.map((member) =>
    changeField.at(at, {
      problem:
        `its ${member} was ${was[member] ?? 'none'} and is now ${is[member] ?? 'none'}` +
        rowsWould(rows, `be read by the ${member} ${is[member] ?? 'none'}`),
      remedy: 'Give it back as it was, and add a new field for the new kind of value.',
    }),
  );
}

function scaleChange(
  name: string,
  was: ScaleMeaning,
  is: ScaleMeaning | undefined,
  place: Place,
  holding: Holding,
): readonly Finding[] {
  return was.levels.flatMap((level) => {
    const now = is?.levels.find((each) => each.level === level.level);
    if (now !== undefined && now.label === level.label) return [];
    const would = now === undefined ? 'have no words' : `read ${now.label}`;
    return [
      changeLevelMeaning.at(
        { ...place, thing: `scale ${name}` },
        {
          problem:
            `level ${level.level} was ${level.label} and is now ${now?.label ?? 'not there'}` +
            rowsWould(holding({ scale: name, level: level.level }), would),
          remedy: 'Give the levels back as they were, and add a new scale and field for the new ones.',
        },
      ),
    ];
  });
}

function codeChange(
  was: CodeMeaning,
  is: CodeMeaning | undefined,
  place: Place,
  holding: Holding,
): readonly Finding[] {
  const at = codePlace(was, place);
  const rows = holding({ list: was.list, code: was.code });
  if (is === undefined)
    return [
      changeCodeGone.at(at, {
        problem: `${was.code} (${was.label}) is no longer in the list${rowsWould(rows, 'decode by the legend alone')}`,
        remedy: 'Put it back with "retiredSince", so that it decodes and can’t be used again.',
      }),
    ];
  if (is.label === was.label) return [];
  return [
    changeCodeMeaning.at(at, {
      problem: `${was.code} was ${was.label} and is now ${is.label}${rowsWould(rows, `read ${is.label}`)}`,
      remedy: GIVE_BACK,
    }),
  ];
}

function codePlace({ list, code }: { readonly list: string; readonly code: string }, place: Place): Place {
  return { ...place, thing: `list ${list}, code ${code}` };
}

function strokesShifted({ of, label, now }: ShiftedStroke, place: Place): Finding {
  const { strokes, is } = now;
  return changeStrokesShifted.at('field' in of ? { ...place, field: of.field } : codePlace(of, place), {
    problem: `${strokes} typed ${label}, and now types ${now.label}; over these rows it is refused`,
    remedy: `Give ${strokes} back to ${label}, and ${now.label} another ${is}.`,
  });
}

/** Strokes of a code or field that is still there, which type nothing any more. */
function strokesDropped(
  was: CodeMeaning | FieldMeaning,
  is: CodeMeaning | FieldMeaning | undefined,
  schema: LoggingSchema,
  at: Place,
): readonly Finding[] {
  if (is === undefined) return [];
  return (['pair', 'key'] as const).flatMap((kind) => {
    const strokes = was[kind];
    if (strokes === undefined || is[kind] === strokes) return [];
    if (strokesOf(schema).some((each) => each.strokes === strokes)) return [];
    return [
      changeStrokesDropped.at(at, {
        problem: `${strokes} typed ${was.label}; now ${is[kind] ?? 'nothing'} does`,
        remedy: `Give ${strokes} back, or tell everybody on the rig.`,
      }),
    ];
  });
}
