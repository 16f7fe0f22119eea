import type { MismatchKind } from '../mismatch.ts';

/** The second chute gave nothing: its bag was off, or its chute was shut or blocked. */
export const emptyDuplicate: MismatchKind = {
  code: 'empty-duplicate',
  name: 'an empty second chute',
  happened: 'The duplicate due in this rod was not caught: the second chute gave nothing.',
  claims: ['a duplicate was not caught'],
  ground:
    'Keep the duplicate’s calico with its number, and spear its metre from the pile later. Ask the driller to have the second chute looked at before the next duplicate.',
  nearSplitter: true,
  suppose: ({ expected }) =>
    expected
      .filter((bag) => bag.kind === 'field duplicate')
      .map((duplicate) => {
        const issue = expected.filter((bag) => bag !== duplicate);
        const { number, kind, of } = duplicate;
        const wait = {
          number,
          kind,
          ...(of === undefined ? {} : { of }),
          reason: 'the second chute gave nothing',
        };
        return { at: number, place: number, fix: { issue, putOff: [wait] }, weight: 2.5 };
      }),
};
