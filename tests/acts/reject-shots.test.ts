import { beforeAll, describe, expect, it } from 'vitest';
import { rejectShotsSaid } from '../../src/acts/reject-shots.ts';
import { holeNouns } from '../../src/hole/hole.ts';
import { applyChanges } from '../../src/record/apply.ts';
import type { Document, Table } from '../../src/record/document.ts';
import { sampleFiles, sitDown } from '../console/support/sitting.ts';

/** The sample's shots at 12 and 42 m in gyro 2, and the same two in a second run, in and out. */
let hole: Document;
beforeAll(async () => {
  const sample = (await sitDown(sampleFiles())).hole('MBRC003');
  const [run] = Object.values(sample.tables.runs ?? {});
  const shots = Object.values(sample.tables.shots ?? {});
  const more = Object.fromEntries(
    ['in', 'out'].flatMap((pass) => shots.map((shot, index) => [`${pass}${index}`, { ...shot, run: pass }])),
  );
  const runs = Object.fromEntries(['in', 'out'].map((pass) => [pass, { ...run, tool: 'gyro 3', pass }]));
  hole = {
    ...sample,
    tables: {
      ...sample.tables,
      runs: { ...sample.tables.runs, ...runs } as Table,
      shots: { ...sample.tables.shots, ...more } as Table,
    },
  };
});

const made = (document: Document, said: string, use = false) => {
  const result = rejectShotsSaid(document, said, use);
  if (!result.ok) throw new Error(result.findings[0]?.problem);
  const applied = applyChanges(document.tables, result.value.changes);
  if (!applied.ok) throw new Error(applied.problem);
  return { what: result.value.what, after: { ...document, tables: applied.tables } };
};
const refusal = (said: string, use = false) => {
  const result = rejectShotsSaid(hole, said, use);
  return result.ok ? undefined : result.findings[0];
};
const rejected = (document: Document) =>
  holeNouns(document, 'shots')
    .filter((shot) => shot.rejected !== undefined)
    .map(({ run }) => run);

describe('shots rejected on one line', () => {
  it('are those of the run that is named, by tool and pass, and are used again the same way', () => {
    const { what, after } = made(hole, '12-42 of Gyro 3 out: it drifts');
    expect(what).toBe('shots at 12–42 m rejected: it drifts');
    expect(rejected(after)).toEqual(['out', 'out']);
    const again = made(after, '42 of gyro 3, out: it was another run', true);
    expect(again.what).toBe('shot at 42 m used again: it was another run');
    expect(rejected(again.after)).toEqual(['out']);
  });

  it('are the azimuths alone where that is said', () => {
    const { what, after } = made(hole, '42 azimuth of gyro 2: near steel');
    expect(what).toBe('azimuth at 42 m rejected: near steel');
    expect(holeNouns(after, 'shots').filter((shot) => shot.azimuthRejected === 'near steel')).toHaveLength(1);
    expect(rejected(after)).toEqual([]);
  });

  it('are refused where several runs have shots there, with how to name one, which then works', () => {
    const refused = refusal('12 misread');
    expect(refused?.problem).toBe('more than one run has shots there: gyro 2; gyro 3, in; gyro 3, out');
    const [, typed = ''] = /colon behind it: (.*?)\. Or/.exec(refused?.remedy ?? '') ?? [];
    expect(made(hole, typed).what).toBe('shot at 12 m rejected: misread');
    expect(refusal('12 of gyro 3: misread')?.problem).toContain('gyro 3, in; gyro 3, out');
  });

  it.each([
    ['12', 'it says no depth, or no reason'],
    ['misread', 'it says no depth, or no reason'],
    ['42-12 misread', 'it says no depth, or no reason'],
    ['60 misread', 'there is no shot at 60 m to reject'],
    ['12 of gyro 9: misread', 'there is no shot at 12 m to reject'],
  ])('are refused as %j: %s', (said, problem) => {
    expect(refusal(said)?.problem).toBe(problem);
  });

  it('can only be used again where they are rejected', () => {
    expect(refusal('12 of gyro 2: it is so', true)?.problem).toBe('there is no shot at 12 m to use again');
  });
});
