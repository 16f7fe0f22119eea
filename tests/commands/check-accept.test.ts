import { describe, expect, it } from 'vitest';
import { copyOfSample, runAt as run } from './support/outside.ts';

interface Listed {
  readonly code: string;
  readonly key: string;
  readonly severity: string;
  readonly problem: string;
  readonly accepted?: { readonly by: string; readonly reason: string };
  readonly acceptedBefore?: { readonly by: string; readonly problem: string };
}

async function listed(folder: string, hole: string): Promise<readonly Listed[]> {
  const { out } = await run(folder, '', 'check', hole, '--json');
  return JSON.parse(out);
}

async function oneOf(folder: string, hole: string, words: string): Promise<Listed> {
  const one = (await listed(folder, hole)).find(({ problem }) => problem.includes(words));
  if (one === undefined) throw new Error(`${hole} has no finding with ${words}`);
  return one;
}

describe('a finding of check', () => {
  it('is accepted with who and why, is shown as that, and no longer fails a check', async () => {
    const folder = copyOfSample();
    const begun = await run(folder, ';rod 12 f\n', 'enter', 'MBRC004', '--rig', 'RC7', '--keep-going');
    expect(begun.code).not.toBe(2);
    const { key } = await oneOf(folder, 'MBRC004', 'no line-up is recorded');
    expect((await run(folder, '', 'check', 'MBRC004')).code).toBe(1);

    const without = await run(folder, '', 'check', 'MBRC004', '--accept', key);
    expect(without).toMatchObject({ code: 2 });
    expect(without.err).toContain(`${key}: no reason is given`);

    const because = ['--because', 'compass broken, camp knows', '--by', 'NOK'] as const;
    const done = await run(folder, '', 'check', 'MBRC004', '--accept', key, ...because);
    expect(done.code).toBe(0);
    expect(done.out).toMatch(/Accepted, 1:\n {2}MBRC004: it is being drilled and no line-up is recorded/);
    expect(done.out).toMatch(/\n {4}NOK 20\d\d-\d\d-\d\d: compass broken, camp knows\n/);
    expect((await oneOf(folder, 'MBRC004', 'no line-up')).accepted).toMatchObject({
      by: 'NOK',
      reason: 'compass broken, camp knows',
    });

    const twice = await run(folder, '', 'check', 'MBRC004', '--accept', key, ...because);
    expect(twice.err).toContain('NOK accepted it on ');
    const back = await run(folder, '', 'check', 'MBRC004', '--open', key);
    expect(back).toMatchObject({ code: 1 });
    expect((await oneOf(folder, 'MBRC004', 'no line-up')).accepted).toBeUndefined();
  });

  it('that was accepted is open again where its facts change, and says what was accepted and by whom', async () => {
    const folder = copyOfSample();
    const one = await oneOf(folder, 'MBRC003', '1 of 9 rods has no record of cyclone');
    await run(
      folder,
      '',
      'check',
      'MBRC003',
      '--accept',
      one.key,
      '--because',
      'not looked at',
      '--by',
      'NOK',
    );
    expect((await oneOf(folder, 'MBRC003', '1 of 9 rods')).accepted?.by).toBe('NOK');
    await run(folder, ';rod 60\n', 'enter', 'MBRC003', '--keep-going');
    const now = await oneOf(folder, 'MBRC003', 'of 10 rods');
    expect(now.accepted).toBeUndefined();
    expect(now.acceptedBefore).toMatchObject({ by: 'NOK', problem: one.problem });
    const { out } = await run(folder, '', 'check', 'MBRC003');
    expect(out).toMatch(/ {2}NOK accepted it on .* \(not looked at\) when it said: 1 of 9 rods/);
  });

  it('gives the exit code 1 from the severity that is asked for', async () => {
    const folder = copyOfSample();
    expect((await run(folder, '', 'check', 'MBRC001')).code).toBe(0);
    expect((await run(folder, '', 'check', 'MBRC001', '--from', 'note')).code).toBe(1);
    await run(folder, ';rod 12 f\n', 'enter', 'MBRC004', '--rig', 'RC7', '--keep-going');
    expect((await run(folder, '', 'check', 'MBRC004')).code).toBe(1);
    expect((await run(folder, '', 'check', 'MBRC004', '--from', 'fault')).code).toBe(0);
  });

  it('of no hole, shift, dispatch or certificate can’t be accepted, and a key that is no one’s is refused', async () => {
    const folder = copyOfSample();
    const gone = await run(folder, '', 'check', '--accept', 'zzzz', '--because', 'x');
    expect(gone).toMatchObject({ code: 2 });
    expect(gone.err).toContain('zzzz: no finding is called that now');
  });
});

describe('a hole', () => {
  it('is signed off at camp, takes no change from then on, and is opened again with the reason', async () => {
    const folder = copyOfSample();
    const signed = await run(folder, '', 'check', 'MBRC001', '--sign-off', 'standards pass', '--by', 'IFA');
    expect(signed.code).toBe(0);
    expect(signed.out).toContain('signed off MBRC001: 150 rows, 169 bags, 6 shots.');
    expect(signed.out).toMatch(/Signed off by IFA on \S+: standards pass\. It takes no change/);

    const refused = await run(folder, ';mass 34-35 bulk 30\n', 'enter', 'MBRC001');
    expect(refused.code).not.toBe(0);
    expect(refused.err).toMatch(/it was signed off by IFA on \S+\. Open it again first, with the reason/);
    const { key } = await oneOf(folder, 'MBRC001', '66 % came up');
    const accepted = await run(folder, '', 'check', 'MBRC001', '--accept', key, '--because', 'weighed twice');
    expect(accepted.code).toBe(0);
    expect((await run(folder, '', 'check', 'MBRC001', '--sign-off', '--by', 'IFA')).err).toContain(
      'and it is as it was',
    );

    const opened = await run(
      folder,
      '',
      'check',
      'MBRC001',
      '--open-again',
      'row 44 was misread',
      '--by',
      'IFA',
    );
    expect(opened.code).toBe(0);
    expect(await run(folder, ';mass 34-35 bulk 30\n', 'enter', 'MBRC001')).toMatchObject({
      code: 0,
      err: '',
    });
  });

  it('is not signed off while it goes on, while a warning of it is open, or by the driller', async () => {
    const folder = copyOfSample();
    const sign = async (hole: string, by: string) =>
      (await run(folder, '', 'check', hole, '--sign-off', '--by', by)).err;
    expect(await sign('MBRC003', 'IFA')).toContain('MBRC003: it is drilling');
    expect(await sign('MBRC001', 'MTA')).toContain('MBRC001: MTA is driller');
    const none = await run(folder, '', 'check', '--sign-off', '--by', 'IFA');
    expect(none.err).toContain('no hole is named');
  });
});
