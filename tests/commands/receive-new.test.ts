import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { run } from '../trust/every-command.ts';
import { copyOfSample, freshFolder, SAMPLE } from './support/outside.ts';

const HOLES = ['MBRC003', 'MBRC004'];

/** A rig’s project with two holes of the sample, its schema starting from a file of its own. */
function rigProject(): string {
  const folder = freshFolder();
  for (const hole of HOLES) {
    mkdirSync(join(folder, 'holes'), { recursive: true });
    cpSync(join(SAMPLE, 'holes', `${hole}.json`), join(folder, 'holes', `${hole}.json`));
  }
  cpSync(join(SAMPLE, 'project.json'), join(folder, 'project.json'));
  mkdirSync(join(folder, 'codes'));
  cpSync(join(SAMPLE, 'logging.json'), join(folder, 'codes', 'ours.json'));
  const base = JSON.parse(readFileSync(join(SAMPLE, 'logging.json'), 'utf8'));
  writeFileSync(
    join(folder, 'logging.json'),
    JSON.stringify({ format: base.format, name: 'rig', extends: './codes/ours.json' }),
  );
  return folder;
}

async function pack(folder: string, ending = '.zip'): Promise<readonly string[]> {
  rmSync(join(folder, 'outbox'), { recursive: true, force: true });
  const packed = await run(['pack', '--by', 'NOK', '--project', folder]);
  expect(packed.err).toBe('');
  return readdirSync(join(folder, 'outbox'))
    .filter((name) => name.endsWith(ending))
    .map((name) => join(folder, 'outbox', name));
}

const tablesIn = (folder: string, hole: string): object =>
  JSON.parse(readFileSync(join(folder, 'holes', `${hole}.json`), 'utf8')).tables;

describe('a camp that begins with what the rig packed', () => {
  it('has its settings, its schema with what that starts from, and every hole', async () => {
    const rig = rigProject();
    const camp = join(freshFolder(), 'camp');
    const began = await run(['receive', '--new', camp, ...(await pack(rig)), '--by', 'IFA']);
    expect(began).toMatchObject({ code: 0, err: '' });
    expect(began.out).toContain('begins in');
    for (const file of ['project.json', 'logging.json', join('codes', 'ours.json')])
      expect(readFileSync(join(camp, file), 'utf8')).toBe(readFileSync(join(rig, file), 'utf8'));
    for (const hole of HOLES) expect(tablesIn(camp, hole)).toEqual(tablesIn(rig, hole));
    expect((await run(['holes', '--project', camp])).out).toContain('MBRC003');
    // What the rig packs next goes in as it does anywhere, and camp’s answer goes back.
    const answer = await run(['pack', '--by', 'IFA', '--project', camp]);
    expect(answer.code).toBe(0);
  });

  it('begins with a bundle that came in several mails, in any order; with one missing nothing is made', async () => {
    const rig = copyOfSample();
    const settings = JSON.parse(readFileSync(join(rig, 'project.json'), 'utf8'));
    const camped = { ...settings, camp: { ...settings.camp, mailMB: 0.1 } };
    writeFileSync(join(rig, 'project.json'), JSON.stringify(camped));
    const mails = await pack(rig, '.eml');
    expect(mails.length).toBeGreaterThan(2);
    const camp = join(freshFolder(), 'camp');
    const short = await run(['receive', '--new', camp, ...mails.slice(1), '--by', 'IFA']);
    expect(short.code).toBe(2);
    expect(short.err).toMatch(/part \d+ of it is missing/);
    expect(existsSync(camp)).toBe(false);
    const began = await run(['receive', '--new', camp, ...mails.toReversed(), '--by', 'IFA']);
    expect(began.err).toBe('');
    for (const hole of HOLES) expect(tablesIn(camp, hole)).toEqual(tablesIn(rig, hole));
  });

  it.each([
    ['initials that are no one’s', ['--by', 'XX'], 'XX is not one of the people'],
    ['a rig that is none', ['--by', 'IFA', '--rig', 'RC99'], 'RC99'],
  ])('leaves nothing behind for %s', async (_, words, says) => {
    const rig = rigProject();
    const camp = join(freshFolder(), 'camp');
    const refused = await run(['receive', '--new', camp, ...(await pack(rig)), ...words]);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain(says);
    expect(existsSync(camp)).toBe(false);
  });

  it('is refused where a project is already, and where no file of it brings the settings', async () => {
    const rig = rigProject();
    const [bundle = ''] = await pack(rig);
    const there = await run(['receive', '--new', rig, bundle, '--by', 'IFA']);
    expect([there.code, there.err]).toEqual([2, expect.stringContaining('it holds a project already')]);
    const camp = join(freshFolder(), 'camp');
    const alone = await run(['receive', '--new', camp, join(SAMPLE, 'holes', 'MBRC003.json'), '--by', 'IFA']);
    expect([alone.code, alone.err]).toEqual([2, expect.stringContaining('offsider pack --whole')]);
    const damaged = join(freshFolder(), 'damaged.zip');
    writeFileSync(damaged, readFileSync(bundle).subarray(0, 4000));
    const torn = await run(['receive', '--new', camp, damaged, '--by', 'IFA']);
    expect(torn.code).toBe(2);
    expect(existsSync(camp)).toBe(false);
  });
});
