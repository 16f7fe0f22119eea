import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inflateExactly } from '../../src/files/inflate.ts';
import { openBundle } from '../../src/handover/bundle/open-bundle.ts';
import { run } from '../trust/every-command.ts';
import { parsedMail } from '../trust/packed.ts';
import { copyOfSample, freshFolder, SAMPLE } from './support/outside.ts';

/** The settings and some holes of the sample. */
function someHoles(...holes: readonly string[]): string {
  const folder = freshFolder();
  for (const file of ['project.json', 'logging.json', ...holes.map((hole) => `holes/${hole}.json`)])
    cpSync(join(SAMPLE, file), join(folder, file));
  return folder;
}

/** Packs into an empty outbox; what is said, and what is in it then. */
async function packed(folder: string, by: string, ...more: readonly string[]) {
  const outbox = join(folder, 'outbox');
  rmSync(outbox, { recursive: true, force: true });
  const { code, out, err } = await run(['pack', ...more, '--by', by, '--project', folder]);
  const files = code === 2 ? [] : readdirSync(outbox).map((name) => join(outbox, name));
  const bundle = files.find((name) => name.endsWith('.zip')) ?? '';
  return { code, out, err, bundle, mails: files.filter((name) => name.endsWith('.eml')) };
}

const receive = (folder: string, by: string, ...files: readonly string[]) =>
  run(['receive', ...files, '--by', by, '--project', folder]);

const enter = (folder: string, hole: string, lines: string) =>
  run(['enter', hole, '--by', 'NOK', '--project', folder], lines);

const tablesOf = (folder: string, hole: string): Record<string, object> =>
  JSON.parse(readFileSync(join(folder, 'holes', `${hole}.json`), 'utf8')).tables;

function namesIn(bundle: string): readonly string[] {
  const opened = openBundle(readFileSync(bundle), 'in.zip', inflateExactly);
  if (!opened.ok) throw new Error('it does not open');
  return opened.value.files.map(({ name }) => name);
}

/** A rig and camp with the same holes, of which camp has acknowledged what the rig packed. */
async function acknowledged(...holes: readonly string[]) {
  const [rig, camp] = [someHoles(...holes), someHoles(...holes)];
  const first = await packed(rig, 'NOK');
  const size = statSync(first.bundle).size;
  expect((await receive(camp, 'IFA', first.bundle)).code).toBe(0);
  const answer = await packed(camp, 'IFA');
  const heard = await receive(rig, 'NOK', answer.mails[0] ?? '');
  expect(heard).toMatchObject({ code: 0, err: '' });
  expect(heard.out).toContain(`The copy of IFA holds ${holes.length} of ${holes.length} documents`);
  return { rig, camp, size, first };
}

const A_ROD = ';rod\np3\n.\n.\n.\n.\n.\n';

describe('what is packed once camp has acknowledged', () => {
  it('is under 5 % of the first bundle after one rod more, and brings camp to the same hole', async () => {
    const { rig, camp, size } = await acknowledged('MBRC003', 'MBRC004');
    expect((await enter(rig, 'MBRC003', A_ROD)).code).toBe(0);
    const second = await packed(rig, 'NOK');
    expect(second.out).toContain('Only what is new or changed since IFA');
    expect(namesIn(second.bundle)).toEqual(['holes/MBRC003.since.json']);
    expect(statSync(second.bundle).size).toBeLessThan(size * 0.05);
    const taken = await receive(camp, 'IFA', second.bundle);
    expect(taken).toMatchObject({ code: 0, err: '' });
    expect(taken.out).toContain('hole MBRC003: newer than ours, taken in: it added 1 rod');
    expect(tablesOf(camp, 'MBRC003')).toEqual(tablesOf(rig, 'MBRC003'));
    expect((await receive(camp, 'IFA', second.bundle)).out).toContain('hole MBRC003: the same as ours');
  });

  it('goes on from what was acknowledged last: a bundle that camp did not acknowledge is packed again', async () => {
    const { rig, camp } = await acknowledged('MBRC003');
    await enter(rig, 'MBRC003', A_ROD);
    await packed(rig, 'NOK');
    await enter(rig, 'MBRC003', '.\n');
    const third = await packed(rig, 'NOK');
    expect((await receive(camp, 'IFA', third.bundle)).code).toBe(0);
    expect(tablesOf(camp, 'MBRC003')).toEqual(tablesOf(rig, 'MBRC003'));
    await receive(rig, 'NOK', (await packed(camp, 'IFA')).bundle);
    expect(namesIn((await packed(rig, 'NOK')).bundle)).toEqual([]);
  });

  it('goes on from camp’s own edits too, which come back the same way', async () => {
    const { rig, camp } = await acknowledged('MBRC003');
    await enter(rig, 'MBRC003', A_ROD);
    expect((await enter(camp, 'MBRC003', ';40-41 py4=\n')).code).toBe(0);
    const back = await packed(camp, 'IFA');
    expect(namesIn(back.bundle)).toEqual(['holes/MBRC003.since.json']);
    expect((await receive(rig, 'NOK', back.bundle)).out).toContain('went its own way, merged with ours');
    const next = await packed(rig, 'NOK');
    expect(namesIn(next.bundle)).toEqual(['holes/MBRC003.since.json']);
    expect((await receive(camp, 'IFA', next.bundle)).code).toBe(0);
    expect(tablesOf(camp, 'MBRC003')).toEqual(tablesOf(rig, 'MBRC003'));
    const rows = Object.values((tablesOf(camp, 'MBRC003') as { rows: object }).rows);
    expect(rows).toContainEqual(
      expect.objectContaining({
        fromMm: 40_000,
        cells: expect.objectContaining({ sulphides: { percents: { PYR: 4 } } }),
      }),
    );
  });

  it('is everything in full with --whole, and where no one of camp has sent a bundle', async () => {
    const { rig } = await acknowledged('MBRC003');
    expect(namesIn((await packed(rig, 'NOK', '--whole')).bundle)).toContain('holes/MBRC003.json');
    const fresh = someHoles('MBRC003');
    const other = await packed(someHoles('MBRC003'), 'NOK');
    await receive(fresh, 'NOK', other.bundle);
    const whole = await packed(fresh, 'NOK');
    expect(whole.out).toContain('Everything in full: no bundle has come from camp (IFA) yet');
    expect(namesIn(whole.bundle)).toContain('holes/MBRC003.json');
    const forOther = await packed(fresh, 'NOK', '--for', 'NOK');
    expect(namesIn(forOther.bundle)).toEqual([]);
    const unknown = await packed(fresh, 'NOK', '--for', 'JPE');
    expect(unknown.code).toBe(2);
    expect(unknown.err).toContain('no bundle has come from JPE');
  });

  it('names what camp has lost since, takes the rest, and exits with 1', async () => {
    const { rig } = await acknowledged('MBRC003', 'MBRC004', 'MBRC005');
    await enter(rig, 'MBRC003', A_ROD);
    const restored = someHoles('MBRC004');
    const second = await packed(rig, 'NOK');
    const taken = await receive(restored, 'IFA', second.bundle);
    expect(taken.code).toBe(1);
    expect(taken.err).toContain('hole MBRC003: it goes on from what is not here');
    expect(taken.err).toContain('Ask for it in full: offsider pack MBRC003 --whole.');
    expect(taken.err).toContain('hole MBRC005: the sender holds it as acknowledged, and it is not here');
    expect(taken.err).not.toContain('MBRC004');
    expect(readdirSync(join(restored, 'holes'))).toEqual(['MBRC004.json']);
    const whole = await packed(rig, 'NOK', 'MBRC003', '--whole');
    expect((await receive(restored, 'IFA', whole.bundle)).code).toBe(0);
    expect(tablesOf(restored, 'MBRC003')).toEqual(tablesOf(rig, 'MBRC003'));
  });

  it('sends a schema again only where it changed, with what it starts from, and names the difference', async () => {
    const { rig, camp } = await acknowledged('MBRC003');
    const path = join(rig, 'logging.json');
    const logging = JSON.parse(readFileSync(path, 'utf8'));
    mkdirSync(join(rig, 'schema of ours'));
    const dunite = { code: 'DUN', label: 'dunite', look: 'olive green', pair: 'uj' };
    const parent = {
      format: 1,
      name: 'ours',
      extends: 'orogenic-gold',
      lists: { rocks: { codes: [dunite] } },
    };
    writeFileSync(join(rig, 'schema of ours', 'Ours.json'), JSON.stringify(parent));
    writeFileSync(path, JSON.stringify({ ...logging, extends: './schema of ours/Ours.json' }));
    const second = await packed(rig, 'NOK');
    expect(namesIn(second.bundle)).toEqual(['logging.json', 'schema/1.json']);
    const taken = await receive(camp, 'IFA', second.bundle);
    expect(taken.code).toBe(1);
    expect(taken.out).toContain('code rocks DUN (dunite): only in theirs');
    await receive(rig, 'NOK', (await packed(camp, 'IFA')).bundle);
    await enter(rig, 'MBRC003', '.\n');
    const third = await packed(rig, 'NOK');
    expect(namesIn(third.bundle)).toEqual(['holes/MBRC003.since.json']);
    // Camp's own is another one still: what the rig's says is known from before.
    expect((await receive(camp, 'IFA', third.bundle)).out).toContain(
      'code rocks DUN (dunite): only in theirs',
    );
  });
});

describe('a bundle larger than a mail may be', () => {
  async function inParts() {
    const rig = copyOfSample();
    const settings = JSON.parse(readFileSync(join(rig, 'project.json'), 'utf8'));
    settings.camp.mailMB = 0.1;
    writeFileSync(join(rig, 'project.json'), JSON.stringify(settings));
    const { mails, out, bundle } = await packed(rig, 'NOK');
    return { rig, mails, out, bundle };
  }

  it('goes in several mails, each under the limit, which say how many there are', async () => {
    const { mails, out } = await inParts();
    expect(mails.length).toBeGreaterThan(2);
    for (const mail of mails) expect(statSync(mail).size).toBeLessThanOrEqual(100_000);
    expect(out).toContain(`Mail draft ${mails.length} of ${mails.length}`);
    const { subject, text } = await parsedMail(readFileSync(mails[1] ?? ''));
    expect(subject).toContain(`(part 2 of ${mails.length})`);
    expect(text).toContain('in any order');
  });

  it('is taken in once every part is there, in any order and on any day, and not before', async () => {
    const { rig, mails } = await inParts();
    const camp = someHoles('MBRC004');
    const [first = '', second = '', ...others] = mails;
    const part = await receive(camp, 'IFA', others.at(-1) ?? '', first, ...others.slice(0, -1));
    expect(part.code).toBe(1);
    expect(part.out).toContain(
      `${mails.length - 1} of ${mails.length} parts are here and kept in the inbox. Missing: part 2.`,
    );
    expect(readdirSync(join(camp, 'holes'))).toEqual(['MBRC004.json']);
    const last = await receive(camp, 'IFA', second);
    expect(last.err).toBe('');
    expect(last.out).toContain('hole MBRC003: new here, taken in');
    expect(tablesOf(camp, 'MBRC002A')).toEqual(tablesOf(rig, 'MBRC002A'));
    expect(readdirSync(join(camp, 'inbox'))).toEqual([]);
    expect((await receive(camp, 'IFA', ...mails)).out).toContain('hole MBRC003: the same as ours');
  });

  it('is not touched by a part that was damaged, which is named', async () => {
    const { mails } = await inParts();
    const camp = someHoles('MBRC004');
    const { attachments } = await parsedMail(readFileSync(mails[1] ?? ''));
    const name = attachments[0]?.filename ?? '';
    const bytes = Buffer.from(attachments[0]?.content as ArrayBuffer);
    const at = Math.floor(bytes.length / 2);
    bytes[at] = (bytes[at] ?? 0) ^ 1;
    const damaged = join(freshFolder(), name);
    writeFileSync(damaged, bytes);
    const taken = await receive(camp, 'IFA', ...mails.filter((_, index) => index !== 1), damaged);
    expect(taken.code).toBe(1);
    expect(taken.err).toContain(name);
    expect(taken.err).toContain('damaged on the way');
    expect(taken.out).toContain('Missing: part 2.');
    expect(readdirSync(join(camp, 'holes'))).toEqual(['MBRC004.json']);
    expect((await receive(camp, 'IFA', mails[1] ?? '')).out).toContain('hole MBRC001: new here, taken in');
  });

  it('is refused part by part where it is of another project', async () => {
    const { mails } = await inParts();
    const other = someHoles('MBRC004');
    const settings = JSON.parse(readFileSync(join(other, 'project.json'), 'utf8'));
    writeFileSync(join(other, 'project.json'), JSON.stringify({ ...settings, name: 'Mulgara West' }));
    const taken = await receive(other, 'IFA', ...mails);
    expect(taken.code).toBe(1);
    expect(taken.err).toContain('it is of the project Mulgara Bend; this one is Mulgara West');
    expect(readdirSync(other)).not.toContain('inbox');
  });
});
