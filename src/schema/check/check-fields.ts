import type { Finding } from '../../finding/finding.ts';
import {
  barrierIdle,
  barrierLater,
  barrierUnknown,
  columnCarries,
  columnUnknown,
  eventCarries,
  ladder,
  numberRange,
  reserved,
  thirdAlone,
  unsaidNone,
} from '../findings.ts';
import { canBeColumn, type Field, type LoggingSchema, SAMPLE_COLUMNS } from '../logging-schema.ts';
import type { Raise } from '../read/whereabouts.ts';

/** Names that the tables of the handover and the entry line keep for themselves. */
const RESERVED_FIELD_NAMES: readonly string[] = ['nr', 'hole', 'from', 'to', 'remark', 'asked'];

/** What is wrong with the fields of a schema, each taken by itself. */
export function checkFields(schema: LoggingSchema, raise: Raise): readonly Finding[] {
  const ofFields = schema.fields.flatMap((field) => [
    ...checkName(field, raise),
    ...checkLadder(field, raise),
    ...checkNumber(field, raise),
    ...checkUnsaid(field, raise),
    ...checkThird(field, raise),
    ...checkEvents(field, raise),
    ...checkBarriers(schema, field, raise),
  ]);
  return [...ofFields, ...checkColumns(schema, raise)];
}

/** Columns of the log on screen: each a field that can be one, or of the sample, and named once. */
function checkColumns({ columns = [], fields }: LoggingSchema, raise: Raise): readonly Finding[] {
  const others: readonly string[] = SAMPLE_COLUMNS;
  return columns.flatMap((name, index) => {
    const field = fields.find((each) => each.name === name);
    const problem =
      columns.indexOf(name) !== index
        ? `${name} is a column twice`
        : field === undefined && !others.includes(name)
          ? `no field is called ${name}`
          : field !== undefined && !canBeColumn(field)
            ? `${field.label} can't be a column: ${field.kind === 'text' ? 'a text is too long' : 'readings are typed down a screen of their own'}`
            : undefined;
    const remedy = `Name a field of the log sheet, or ${SAMPLE_COLUMNS.join(', ')}, each once.`;
    return problem === undefined ? [] : [raise(columnUnknown, { column: name }, { problem, remedy })];
  });
}

function checkName(field: Field, raise: Raise): readonly Finding[] {
  if (!RESERVED_FIELD_NAMES.includes(field.name)) return [];
  return [
    raise(
      reserved,
      { field: field.name, member: 'name' },
      {
        problem: `${field.name} is a word that the entry line or the handover keeps for itself`,
        remedy: 'Give the field another name.',
      },
    ),
  ];
}

function checkLadder(field: Field, raise: Raise): readonly Finding[] {
  if (!('ladder' in field)) return [];
  const wrong = field.ladder.findIndex(
    (step, index) => step <= (index === 0 ? 0 : (field.ladder[index - 1] ?? 0)) || step > 100,
  );
  if (wrong === -1) return [];
  return [
    raise(
      ladder,
      { field: field.name, member: 'ladder' },
      {
        problem: `${field.ladder[wrong]} is out of order, or not over 0 and at most 100`,
        remedy: 'Write the steps from the smallest to the largest.',
      },
    ),
  ];
}

function checkNumber(field: Field, raise: Raise): readonly Finding[] {
  if (field.kind !== 'number') return [];
  return [
    ...(field.min < field.max
      ? []
      : [
          raise(
            numberRange,
            { field: field.name, member: 'min' },
            {
              problem: `its smallest, ${field.min}, is not under its largest, ${field.max}`,
              remedy: 'Put the smaller one in "min".',
            },
          ),
        ]),
    ...(field.column && (field.carry || field.required)
      ? [
          raise(
            columnCarries,
            { field: field.name, member: field.carry ? 'carry' : 'required' },
            {
              problem: `a column of readings is set to ${field.carry ? 'carry' : 'be required'}`,
              remedy: `Put "${field.carry ? 'carry' : 'required'}": false.`,
            },
          ),
        ]
      : []),
  ];
}

function checkUnsaid(field: Field, raise: Raise): readonly Finding[] {
  if (field.unsaid !== 'none' || field.canBeNone) return [];
  return [
    raise(
      unsaidNone,
      { field: field.name, member: 'unsaid' },
      {
        problem: 'left out it means none, but none is not allowed for it',
        remedy: 'Put "unsaid": "not observed", or "canBeNone": true if there may be none of it.',
      },
    ),
  ];
}

function checkEvents(field: Field, raise: Raise): readonly Finding[] {
  const member = field.carry ? 'carry' : 'required';
  if (field.kind !== 'events' || !field[member]) return [];
  return [
    raise(
      eventCarries,
      { field: field.name, member },
      {
        problem: `events are set to ${member === 'carry' ? 'carry' : 'be required'}`,
        remedy: `Put "${member}": false.`,
      },
    ),
  ];
}

function checkThird(field: Field, raise: Raise): readonly Finding[] {
  if (field.kind !== 'code' || field.third !== true || field.second) return [];
  return [
    raise(
      thirdAlone,
      { field: field.name, member: 'third' },
      {
        problem: 'a third may stand there, and no second',
        remedy: 'Put "second": true, or take "third" out.',
      },
    ),
  ];
}

/** What is wrong with the fields that one does not carry across a change of. */
function checkBarriers(schema: LoggingSchema, field: Field, raise: Raise): readonly Finding[] {
  const part = { field: field.name, member: 'notAcross' };
  const at = schema.fields.indexOf(field);
  const misplaced = (field.notAcross ?? []).flatMap((name): readonly Finding[] => {
    const barrier = schema.fields.findIndex((each) => each.name === name);
    if (barrier === -1)
      return [
        raise(barrierUnknown, part, {
          problem: `it does not carry across a change of ${name}, and no field is called so`,
          remedy: `Name a field above it: ${
            schema.fields
              .slice(0, at)
              .map((each) => each.name)
              .join(', ') || 'there is none'
          }.`,
        }),
      ];
    if (barrier < at) return [];
    return [
      raise(barrierLater, part, {
        problem: `it does not carry across a change of ${name}, which ${barrier === at ? 'is itself' : 'is below it'}`,
        remedy: `Move ${field.name} below ${name}, or name a field above it.`,
      }),
    ];
  });
  const idle = field.notAcross !== undefined && !field.carry;
  return [
    ...misplaced,
    ...(idle
      ? [
          raise(barrierIdle, part, {
            problem: 'it never carries, so there is nothing to hold back',
            remedy: 'Put "carry": true, or take "notAcross" out.',
          }),
        ]
      : []),
  ];
}
