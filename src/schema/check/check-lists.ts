import type { Finding } from '../../finding/finding.ts';
import { dangerNamed } from '../cautions.ts';
import {
  cautionMissing,
  codeTwice,
  codeUnsayable,
  densityLevel,
  labelTwice,
  listEmpty,
  listMissing,
  listShared,
  provisional,
  scaleBroken,
  scaleMissing,
} from '../findings.ts';
import type { ByLevel, Code, CodeList, LoggingSchema, Scale } from '../logging-schema.ts';
import type { Raise } from '../read/whereabouts.ts';
import { checkQualifiers, writtenLists } from './check-qualifiers.ts';

/** What is wrong with the lists of a schema and with what fields take from them. */
export function checkLists(schema: LoggingSchema, raise: Raise): readonly Finding[] {
  return [
    ...Object.values(schema.lists).flatMap((list) => checkList(list, raise)),
    ...checkQualifiers(schema, raise),
    ...schema.fields.flatMap((field, index) => {
      if (!('list' in field)) return [];
      const list = schema.lists[field.list];
      const part = { field: field.name, member: 'list' };
      if (list === undefined || list.notThere === true)
        return [
          raise(listMissing, part, {
            problem: `it takes its codes from the list ${field.list}, which is not there`,
            remedy: `Write it, or name one of: ${writtenLists(schema)}.`,
          }),
        ];
      const earlier = schema.fields
        .slice(0, index)
        .find((each) => 'list' in each && each.list === field.list);
      return [
        ...(list.codes.some((code) => code.retiredSince === undefined)
          ? []
          : [
              raise(listEmpty, part, {
                problem: `the list ${field.list} has no code that can be used`,
                remedy: 'Add codes to the list, or take the field away.',
              }),
            ]),
        ...(earlier === undefined
          ? []
          : [
              raise(listShared, part, {
                problem: `it shares the list ${field.list} with ${earlier.name}; pairs type into ${earlier.name}`,
                remedy: `Make a list of its own, or say it by its name each time.`,
              }),
            ]),
      ];
    }),
  ];
}

/** Densities by the level of a field that the schema has not, or of a level that its scale has not. */
export function checkDensities(schema: LoggingSchema, raise: Raise): readonly Finding[] {
  return Object.values(schema.lists).flatMap((list) => [
    ...notLevels(schema, list.densityShares).map((problem) =>
      raise(densityLevel, { list: list.name, member: 'densityShares' }, { problem, remedy: LEVEL_REMEDY }),
    ),
    ...list.codes.flatMap(({ code, densityAtLevels }) =>
      notLevels(schema, densityAtLevels).map((problem) =>
        raise(
          densityLevel,
          { list: list.name, code, member: 'densityAtLevels' },
          { problem, remedy: LEVEL_REMEDY },
        ),
      ),
    ),
  ]);
}

const LEVEL_REMEDY = 'Name a field of levels, and digits of its scale: { "weathering": { "4": 0.82 } }.';

function notLevels(schema: LoggingSchema, figures: ByLevel = {}): readonly string[] {
  return Object.entries(figures).flatMap(([name, levels]) => {
    const field = schema.fields.find((each) => each.name === name);
    const scale = field?.kind === 'level' ? schema.scales[field.scale] : undefined;
    if (scale === undefined) return [`${name} is not a field of levels`];
    return Object.keys(levels)
      .filter((level) => !scale.levels.some((each) => String(each.level) === level))
      .map((level) => `${name} has no level ${level}`);
  });
}

function checkList(list: CodeList, raise: Raise): readonly Finding[] {
  return list.codes.flatMap((code, index) => {
    const above = list.codes.slice(0, index);
    const part = { list: list.name, code: code.code };
    const sameCode = above.find((each) => each.code.toLowerCase() === code.code.toLowerCase());
    const sameLabel = above.find(
      (each) => each.label.toLowerCase() === code.label.toLowerCase() && each.retiredSince === undefined,
    );
    return [
      ...(sameCode === undefined
        ? []
        : [
            raise(codeTwice, part, {
              problem: `${code.code} and ${sameCode.code} differ only in capitals`,
              remedy: 'Rename one of the two; take care which of them old logs mean.',
            }),
          ]),
      ...(sameLabel === undefined || code.retiredSince !== undefined
        ? []
        : [
            raise(
              labelTwice,
              { ...part, member: 'label' },
              {
                problem: `${code.code} and ${sameLabel.code} are both called ${code.label}`,
                remedy: 'Say in the label how they differ.',
              },
            ),
          ]),
      ...checkCode(code, part, raise),
    ];
  });
}

function checkCode(
  code: Code,
  part: { readonly list: string; readonly code: string },
  raise: Raise,
): readonly Finding[] {
  const unsayable = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u.test(code.code) || code.code.trim() !== code.code;
  return [
    ...(unsayable
      ? [
          raise(codeUnsayable, part, {
            problem: `the code ${JSON.stringify(code.code)} has a space at its edge or a character that can’t be seen`,
            remedy: 'Take it out of the code.',
          }),
        ]
      : []),
    ...nameless(code, part, raise),
    ...(code.provisional === true
      ? [
          raise(provisional, part, {
            problem: `${code.code} (${code.label}) was added on the rig`,
            remedy: 'Ask camp; then take "provisional" out, or retire the code.',
          }),
        ]
      : []),
  ];
}

/** A code in use whose words name a danger that it does not warn of. */
function nameless(
  { code, label, caution, retiredSince }: Code,
  part: { readonly list: string; readonly code: string },
  raise: Raise,
): readonly Finding[] {
  const kind = dangerNamed(label);
  if (kind === undefined || caution !== undefined || retiredSince !== undefined) return [];
  return [
    raise(cautionMissing, part, {
      problem: `${code} is called ${label} and has no caution (${kind})`,
      remedy: `Give it "caution": { "kind": "${kind}", "words": … }, or accept this if it is none.`,
    }),
  ];
}

/** What is wrong with the scales of a schema, and fields whose scale is not there. */
export function checkScales(schema: LoggingSchema, raise: Raise): readonly Finding[] {
  return [
    ...Object.values(schema.scales).flatMap((scale) => checkScale(scale, raise)),
    ...schema.fields.flatMap((field) =>
      !('scale' in field) || schema.scales[field.scale] !== undefined
        ? []
        : [
            raise(
              scaleMissing,
              { field: field.name, member: 'scale' },
              {
                problem: `it names the scale ${field.scale}, which is not there`,
                remedy: `Name one of: ${Object.keys(schema.scales).join(', ') || 'none is there yet'}.`,
              },
            ),
          ],
    ),
  ];
}

function checkScale(scale: Scale, raise: Raise): readonly Finding[] {
  const gap = scale.levels.findIndex((each, index) => each.level !== index + 1);
  const codes = scale.levels.flatMap((each) => (each.code === undefined ? [] : [each.code.toLowerCase()]));
  const twice = codes.find((code, index) => codes.indexOf(code) < index);
  const number = codes.find((code) => /^[\d.,]+$/.test(code));
  const broken = (problem: string, remedy: string) =>
    raise(scaleBroken, { scale: scale.name }, { problem, remedy });
  return [
    ...(gap === -1
      ? []
      : [broken(`level ${gap + 1} is missing or out of order`, 'Number the levels 1, 2, 3 and so on.')]),
    ...(scale.levels.length > 9
      ? [broken('it has more than 9 levels', 'One digit types a level: join some.')]
      : []),
    ...(twice === undefined ? [] : [broken(`the code ${twice} means two levels`, 'Rename one of them.')]),
    ...(number === undefined
      ? []
      : [broken(`the code ${number} reads as a level's digit`, 'Use letters, or leave the code out.')]),
  ];
}
