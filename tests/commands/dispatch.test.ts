import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { receive } from '../../src/commands/camp.ts';
import { check } from '../../src/commands/check.ts';
import {
  dispatches,
  dispatchReceipt,
  dispatchSheet,
  newDispatch,
  passDispatch,
} from '../../src/commands/dispatch.ts';
import type { Outside } from '../../src/desk/outside.ts';
import { obeyedInLines } from '../trust/vectors.ts';
import { copyOfSample, hear, SAMPLE } from './support/outside.ts';

async function run(command: (outside: Outside) => Promise<number>) {
  const heard = hear();
  const code = await command(heard.outside);
  return { code, out: heard.out(), err: heard.err() };
}

const make = (folder: string, said: object = {}) =>
  run((outside) => newDispatch(outside, { folder, dryRun: false, ...said }));
const list = (folder: string) => run((outside) => dispatches(outside, { folder, json: true }));
const sheet = (folder: string, reader: 'laboratory' | 'camp', as: 'text' | 'csv' | 'html') =>
  run((outside) => dispatchSheet(outside, { folder, dispatch: undefined, reader, as }));

describe('a dispatch', () => {
  it('is made of everything issued and not sent, five calicos a sack, under the day and who made it', async () => {
    const folder = copyOfSample();
    const before = JSON.parse((await list(folder)).out);
    const { code, out } = await make(folder);
    const after = JSON.parse((await list(folder)).out);
    expect(code).toBe(0);
    expect(out).toContain('dispatch D2026-03-14-NOK-2 to Wattlebird Assay: 192 bags in 39 sacks');
    expect(after.waiting).toEqual([]);
    const made = after.dispatches.at(-1);
    expect(made.sacks.flatMap((each: { bags: string[] }) => each.bags)).toEqual(before.waiting);
    expect(made.sacks.slice(0, -1).every((each: { bags: string[] }) => each.bags.length === 5)).toBe(true);
  });

  it('is only shown by a dry run', async () => {
    const folder = copyOfSample();
    const { out } = await make(folder, { dryRun: true });
    expect(out).toContain('Would be: dispatch');
    expect(JSON.parse((await list(folder)).out).dispatches).toHaveLength(1);
  });

  it.each([
    [['MB000125'], 'MB000125 was sent before, in D2026-03-14-NOK.'],
    [['MB000301', 'MB000301'], 'MB000301 is in this dispatch twice.'],
    [['MB000301', 'MB000303'], 'MB000302 is between bags that go, and does not go.'],
    [['MB001999'], 'MB001999 was never issued.'],
    [['XX1'], 'XX1 is no bag number of this project.'],
  ])('of %j is refused, and nothing is made', async (bags, problem) => {
    const folder = copyOfSample();
    const { code, err } = await make(folder, { bags });
    expect(code).toBe(2);
    expect(err).toContain(problem);
    expect(JSON.parse((await list(folder)).out).dispatches).toHaveLength(1);
  });

  it.each([
    [{ name: 'a/b' }, 'only capitals, digits, _ and -'],
    [{ name: 'CON' }, 'CON is a name that some computers keep for devices'],
    [{ name: 'd2026-03-14-nok' }, 'there is a dispatch of this name already'],
    [{ bags: ['MB000301-MB000302'], name: 'X'.repeat(41) }, 'longer than 40'],
  ])('named %j is refused', async (said, problem) => {
    const { code, err } = await make(copyOfSample(), said);
    expect([code, err]).toEqual([2, expect.stringContaining(problem)]);
  });

  it('changes hands as it is counted; a sack fewer is recorded, said, and found by the check', async () => {
    const folder = copyOfSample();
    const pass = (to: string, sacks: number, sealsWhole = true) =>
      run((outside) => passDispatch(outside, { folder, dispatch: 'NOK', to, sacks, sealsWhole }));
    expect(await pass('Wattlebird Assay', 34)).toMatchObject({
      code: 0,
      out: expect.stringContaining('Orla Venn, freight to Wattlebird Assay: 34 sacks counted, seals intact'),
    });
    const short = await pass('the store', 33, false);
    expect(short.code).toBe(1);
    expect(short.out).toContain('33 sacks counted, 34 sent; a seal was broken.');
    expect((await run((outside) => check(outside, { folder, json: false }))).out).toContain(
      '33 sacks counted',
    );
  });

  it('is compared with the receipt, whose name and hash are kept; the same file twice is refused', async () => {
    const folder = copyOfSample();
    const receipt = (file: string) =>
      run((outside) => dispatchReceipt(outside, { folder, dispatch: 'NOK', file }));
    const whole = join(folder, 'laboratory/receipt.csv');
    expect(await receipt(whole)).toMatchObject({ code: 0, out: expect.stringContaining('all as sent') });
    expect(await receipt(whole)).toMatchObject({ code: 2, err: expect.stringContaining('taken in before') });
    const short = join(folder, 'short.csv');
    writeFileSync(short, 'Sample\nMB000121\nMB000122\nMB009999\n');
    const found = await receipt(short);
    expect(found.code).toBe(1);
    expect(found.out).toContain('167 not received.');
    expect(found.out).toContain('1 received and never sent.');
    const kept = JSON.parse((await list(folder)).out).dispatches[0].receipts;
    expect(kept).toMatchObject([
      { file: 'receipt.csv', takenInBy: 'NOK', sha256: expect.stringMatching(/^[0-9a-f]{64}$/) },
      { file: 'short.csv' },
    ]);
  });
});

describe('its sheets', () => {
  it.each(['text', 'csv', 'html'] as const)(
    'say nothing of a control to the laboratory as %s',
    async (as) => {
      const { out } = await sheet(SAMPLE, 'laboratory', as);
      expect(out).toContain('MB000133');
      expect(out).not.toMatch(/standard|blank|duplicate|primary|quartz|K17|M04|R22|MBRC|metre|camp/i);
    },
  );
  it.each(['text', 'csv', 'html'] as const)('say what is in every bag to camp as %s', async (as) => {
    const { out } = await sheet(SAMPLE, 'camp', as);
    expect(out).toMatch(/MBRC001/);
    expect(out).toMatch(/field duplicate/);
    expect(out).toMatch(/K17/);
  });
  it('are of one length for every sack: an odd one out would tell where the controls are', async () => {
    const lines = (await sheet(SAMPLE, 'laboratory', 'csv')).out.trim().split('\r\n').slice(1);
    expect(new Set(lines.slice(0, 100).map((each) => each.replace(/^\d+/, '').length)).size).toBe(1);
  });
});

it('a receipt of hostile cells reaches no terminal as a command', async () => {
  const folder = copyOfSample();
  const file = join(folder, 'hostile.csv');
  writeFileSync(file, 'Sample\nMB000121\n"\x1b]0;owned\x07=1+1"\n"\u202eMB1"\n');
  const { out, err } = await run((outside) => dispatchReceipt(outside, { folder, dispatch: 'NOK', file }));
  expect(obeyedInLines(out + err)).toBeUndefined();
});

it('a dispatch made up on another computer is taken in, and its bags no longer wait', async () => {
  const [ours, theirs] = [copyOfSample(), copyOfSample()];
  await make(theirs, { by: 'NOK' });
  const name = JSON.parse((await list(theirs)).out).dispatches.at(-1).name;
  const received = await run((outside) =>
    receive(outside, { folder: ours, files: [join(theirs, 'dispatches', `${name}.json`)] }),
  );
  expect(received.out).toContain(`dispatch ${name}: new here, taken in`);
  expect(JSON.parse((await list(ours)).out).waiting).toEqual([]);
});

it('one bag in two dispatches, made up apart and brought together, is found with both sacks', async () => {
  const [ours, theirs] = [copyOfSample(), copyOfSample()];
  await make(ours, { name: 'D1', bags: ['MB000301'] });
  await make(theirs, { name: 'D2', bags: ['MB000301'] });
  await run((outside) => receive(outside, { folder: ours, files: [join(theirs, 'dispatches/D2.json')] }));
  const { out, code } = await run((outside) => check(outside, { folder: ours, json: false }));
  expect(code).toBe(1);
  expect(out).toMatch(/MB000301 is in sack 1 of D[12] and in sack 1 of D[12]\./);
});
