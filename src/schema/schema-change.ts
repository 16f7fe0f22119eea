import type { Finding } from '../finding/finding.ts';
import type { Place } from '../finding/place.ts';
import { changeAdded } from './findings/change-added.ts';
import { changeCodeGone } from './findings/change-code-gone.ts';
import { changeCodeMeaning } from './findings/change-code-meaning.ts';
import { changeField } from './findings/change-field.ts';
import { changeFieldGone } from './findings/change-field-gone.ts';
import { changeLevelMeaning } from './findings/change-level-meaning.ts';
import { changeStrokesDropped } from './findings/change-strokes-dropped.ts';
import { changeStrokesShifted } from './findings/change-strokes-shifted.ts';
import {
  allMeanings,
  type CodeMeaning,
  type FieldMeaning,
  type Meanings,
  type ScaleMeaning,
} from './legend.ts';
import type { LoggingSchema } from './logging-schema.ts';
import { strokesOf } from './strokes.ts';

const GIVE_BACK =
  'Give it back as it was. If something else is meant, add a new code and retire the old one.';

/**
 * What a schema changes for rows that were logged with `logged` (a hole's legend, or all that the schema before it meant):
 * what they would mean now, and strokes whose meaning has shifted. A fault means: don't log on with it.
 */
export function changesUnder(logged: Meanings, schema: LoggingSchema, place: Place = {}): readonly Finding[] {
  const now = allMeanings(schema);
  return [
    ...Object.entries(logged.fields).flatMap(([name, field]) =>
      fieldChange(name, field, now.fields[name], place),
    ),
    ...Object.entries(logged.scales).flatMap(([name, scale]) =>
      scaleChange(name, scale, now.scales[name], place),
    ),
    ...Object.entries(logged.codes).flatMap(([name, code]) => [
      ...codeChange(code, now.codes[name], place),
      ...strokesChange(code, now.codes[name], schema, place),
    ]),
  ];
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
): readonly Finding[] {
  const at = { ...place, field: name };
  if (is === undefined)
    return [
      changeFieldGone.at(at, {
        problem: `${was.label} is no longer on the log sheet`,
        remedy: 'Old rows keep it. Put it back if it should go on.',
      }),
    ];
  const changed = (['kind', 'unit', 'list', 'scale'] as const).filter((member) => was[member] !== is[member]);
  return changed.map((member) =>
    changeField.at(at, {
      problem: `its ${member} was ${was[member] ?? 'none'} and is now ${is[member] ?? 'none'}`,
      remedy: 'Give it back as it was, and add a new field for the new kind of value.',
    }),
  );
}

function scaleChange(
  name: string,
  was: ScaleMeaning,
  is: ScaleMeaning | undefined,
  place: Place,
): readonly Finding[] {
  return was.levels.flatMap((level) => {
    const now = is?.levels.find((each) => each.level === level.level);
    if (now !== undefined && now.label === level.label) return [];
    return [
      changeLevelMeaning.at(
        { ...place, thing: `scale ${name}` },
        {
          problem: `level ${level.level} was ${level.label} and is now ${now?.label ?? 'not there'}`,
          remedy: 'Give the levels back as they were, and add a new scale and field for the new ones.',
        },
      ),
    ];
  });
}

function codeChange(was: CodeMeaning, is: CodeMeaning | undefined, place: Place): readonly Finding[] {
  const at = { ...place, thing: `list ${was.list}, code ${was.code}` };
  if (is === undefined)
    return [
      changeCodeGone.at(at, {
        problem: `${was.code} (${was.label}) is no longer in the list`,
        remedy: 'Put it back with "retiredSince", so that it decodes and can’t be used anew.',
      }),
    ];
  if (is.label === was.label) return [];
  return [
    changeCodeMeaning.at(at, {
      problem: `${was.code} was ${was.label} and is now ${is.label}`,
      remedy: GIVE_BACK,
    }),
  ];
}

function strokesChange(
  was: CodeMeaning,
  is: CodeMeaning | undefined,
  schema: LoggingSchema,
  place: Place,
): readonly Finding[] {
  const at = { ...place, thing: `list ${was.list}, code ${was.code}` };
  return (['pair', 'key'] as const).flatMap((kind) => {
    const strokes = was[kind];
    if (strokes === undefined || is?.[kind] === strokes) return [];
    const other = strokesOf(schema).find((each) => each.strokes === strokes);
    if (other !== undefined)
      return [
        changeStrokesShifted.at(at, {
          problem: `${strokes} typed ${was.label}, and now types ${other.label}`,
          remedy: `Give ${strokes} back to ${was.label}, and ${other.label} another ${kind}.`,
        }),
      ];
    if (is === undefined) return [];
    return [
      changeStrokesDropped.at(at, {
        problem: `${strokes} typed ${was.label}; now ${is[kind] ?? 'nothing'} does`,
        remedy: `Give ${strokes} back, or tell everybody on the rig.`,
      }),
    ];
  });
}
