import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { homedir, hostname, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { receive } from '../../src/commands/camp.ts';
import { holes } from '../../src/commands/holes.ts';
import { pack } from '../../src/commands/pack.ts';
import { openDesk } from '../../src/desk/desk.ts';
import { inflateExactly } from '../../src/files/inflate.ts';
import { openBundle } from '../../src/handover/bundle/open-bundle.ts';
import { attached, mailWith } from '../trust/crafted-mail.ts';
import { craftZip } from '../trust/crafted-zip.ts';
import { run } from '../trust/every-command.ts';
import { parsedMail } from '../trust/packed.ts';
import { copyOfSample, freshFolder, hear, SAMPLE } from './support/outside.ts';

/** The settings, one hole and one shift of the sample: enough for what is not about the whole project, and sooner opened. */
function oneHole(): string {
  const folder = freshFolder();
  for (const file of ['project.json', 'logging.json', 'holes/MBRC003.json', 'shifts/RC7_2026-03-14_DAY.json'])
    cpSync(join(SAMPLE, file), join(folder, file));
  return folder;
}

/** Packs in a folder; what was said, and the files of the outbox. */
async function packIn(folder: string, ...names: string[]) {
  const heard = hear();
  const code = await pack(heard.outside, { folder, by: 'NOK', names });
  const outbox = readdirSync(folder).includes('outbox') ? readdirSync(join(folder, 'outbox')).sort() : [];
  return { code, out: heard.out(), err: heard.err(), outbox };
}

async function receiveIn(folder: string, ...files: string[]) {
  const heard = hear();
  const code = await receive(heard.outside, { folder, by: 'IFA', files });
  return { code, out: heard.out(), err: heard.err() };
}

/** A file with these bytes in a folder of its own. */
function fileWith(name: string, bytes: Uint8Array): string {
  const path = join(freshFolder(), name);
  writeFileSync(path, bytes);
  return path;
}

/** SHA-256 of every file of a project but those of its journal, in which each opening begins a generation. */
function hashes(folder: string): Readonly<Record<string, string>> {
  const files = readdirSync(folder, { recursive: true })
    .map(String)
    .filter((file) => !file.startsWith('journal') && statSync(join(folder, file)).isFile());
  return Object.fromEntries(
    files.sort().map((file) => [
      file,
      createHash('sha256')
        .update(readFileSync(join(folder, file)))
        .digest('hex'),
    ]),
  );
}

/** Changes a row of MBRC003 in a copy of the project, as its console would. */
async function rockIs(folder: string, code: string): Promise<void> {
  const { clock, random } = hear().outside;
  const opened = await openDesk({ folder, person: 'NOK', clock, random });
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  const document = { kind: 'hole', id: 'MBRC003' };
  const rows = opened.value.get(document)?.tables.rows ?? {};
  const [id, row] = Object.entries(rows).find(([, each]) => each.fromMm === 45_000) ?? [];
  const cells = { ...(row?.cells as object), rock: { code } };
  opened.value.submit({
    what: 'amended',
    parts: [{ document, changes: [{ patch: ['rows', String(id)], set: { cells } }] }],
  });
  expect(await opened.value.close()).toEqual({ ok: true });
}

/** The file of MBRC003 with the rock of 45–46 m changed in an editor. */
function editedByHand(folder: string, code: string): Uint8Array {
  const text = readFileSync(join(folder, 'holes/MBRC003.json'), 'utf8');
  const row =
    text
      .split('\n')
      .find((line) => /"fromMm": 45000, "toMm": 46000, "cells"/.test(line) && !line.includes('"edit"')) ?? '';
  const edited = text.replace(row, row.replace(/("rock": \{ "code": )"[A-Z]+"/, `$1"${code}"`));
  expect(edited).not.toBe(text);
  return Buffer.from(edited);
}

const rockOf = (folder: string): unknown => {
  const file = JSON.parse(readFileSync(join(folder, 'holes/MBRC003.json'), 'utf8'));
  return Object.values<{ fromMm: number; cells: { rock: { code: string } } }>(file.tables.rows).find(
    (row) => row.fromMm === 45_000,
  )?.cells.rock.code;
};

describe('a hole that can’t be read or is gone', () => {
  it('is named by holes, by pack and by its letter, with exit code 1', async () => {
    const folder = copyOfSample();
    writeFileSync(join(folder, 'holes/MBRC002.json'), '{"half a fi');
    const listed = hear();
    expect(await holes(listed.outside, { folder, json: false })).toBe(1);
    expect(listed.out()).toContain('MBRC002: its file cannot be read (holes/MBRC002.json)');
    const data = hear();
    expect(await holes(data.outside, { folder, json: true })).toBe(1);
    expect(JSON.parse(data.out())).toContainEqual({
      id: 'MBRC002',
      name: 'MBRC002',
      file: 'holes/MBRC002.json',
      problem: 'its file cannot be read',
    });
    const packed = await packIn(folder);
    expect(packed.code).toBe(1);
    const said = 'MBRC002: NOT in the bundle, or not whole: its file cannot be read (holes/MBRC002.json).';
    expect(packed.out).toContain(said);
    const [mail = ''] = packed.outbox.filter((name) => name.endsWith('.eml'));
    const { text } = await parsedMail(readFileSync(join(folder, 'outbox', mail)));
    expect(text).toContain(said);
    // A hole that is whole, asked for by name, is packed whole.
    expect((await packIn(folder, 'MBRC003')).code).toBe(0);
  });
});

describe('pack', () => {
  it('lays a bundle and a mail draft down in the outbox, says where, that nothing was sent, and what is not finished', async () => {
    const { code, out, outbox } = await packIn(oneHole(), 'MBRC003');
    expect(code).toBe(0);
    expect(outbox).toEqual([
      expect.stringMatching(/^MULGARA-BEND_2026-03-14_0930_[0-9A-F]{8}\.eml$/),
      expect.stringMatching(/\.zip$/),
    ]);
    for (const file of outbox) expect(out).toContain(`outbox/${file}`);
    expect(out).toContain('to camp@ochre-wren.example');
    expect(out).toContain('Nothing has been sent.');
    expect(out).toMatch(
      /Not finished:\n {2}MBRC003: Drilled 54 of 120 m planned\.\n {2}MBRC003: 46–54 is not logged\./,
    );
  });

  it('lays down nothing that says on which computer, by which user and in which folder it was packed', async () => {
    const folder = join(freshFolder(), 'west-of-the-ridge');
    const files = join(freshFolder(), 'private-folder');
    mkdirSync(files);
    cpSync(join(SAMPLE, 'program.csv'), join(files, 'program.csv'));
    for (const name of ['MBRC001_tray1.jpg', 'MBRC001_tray2.jpg']) writeFileSync(join(files, name), '');
    const shots = join(files, 'shots.csv');
    writeFileSync(shots, 'depth,dip,azimuth\n30,-60,270\n');
    const certificate = join(files, 'WA26-0417.csv');
    cpSync(join(SAMPLE, 'laboratory/WA26-0417.csv'), certificate);
    const program = join(files, 'program.csv');
    const made = ['new', folder, '--style', 'orogenic-gold', '--program', program, '--epsg', '7851'];
    expect((await run(made)).code).toBe(0);
    const sample = copyOfSample();
    for (const argv of [
      ['survey', 'MBRC001', '--shots', shots, '--run', 'north-seeking in open', '--insist'],
      ['results', certificate, '--keep-going'],
      ['trays', 'MBRC001', '--photos', files],
      ['collars', program, '--keep-going'],
    ])
      await run([...argv, '--project', sample]);
    await run(['enter', 'MBRC001', '--project', sample], `;photo 3 ${join(files, 'IMG_0412.JPG')}\n`);
    for (const project of [folder, sample]) {
      expect((await run(['pack', '--project', project])).code).toBe(0);
      const outbox = join(project, 'outbox');
      const texts: string[] = [];
      for (const name of readdirSync(outbox)) {
        const bytes = readFileSync(join(outbox, name));
        if (!name.endsWith('.zip')) {
          // The draft without the lines of its attachment, which is the bundle and is opened below.
          texts.push(bytes.toString('utf8').replaceAll(/^[A-Za-z0-9+/=]{40,}\r?$/gm, ''));
          continue;
        }
        const opened = openBundle(bytes, name, inflateExactly);
        if (!opened.ok) throw new Error('it does not open');
        for (const each of [opened.value.manifest, ...opened.value.files])
          texts.push(each.name, Buffer.from(each.bytes).toString('utf8'));
      }
      const all = texts.join('\n');
      expect(all).toContain('MBRC001');
      for (const word of [
        files,
        'private-folder',
        dirname(project),
        tmpdir(),
        homedir(),
        hostname(),
        process.cwd(),
      ])
        expect(all, word).not.toContain(word);
      expect(all).not.toMatch(new RegExp(`\\b${hostname()}\\b`));
      expect(all).not.toMatch(/"(?:host|user|owner|process|boot)"|[A-Z]:\\\\|\/(?:home|Users|tmp|var)\//);
    }
  });

  it.each([
    '/home/kim/Desktop/program.csv',
    'C:\\Users\\kim\\program.csv',
    '\\\\camp-server\\kim\\program.csv',
    '~/program.csv',
    '../kim/program.csv',
  ])('packs no history of an earlier version that holds the path %s, unless that is said', async (path) => {
    const folder = oneHole();
    const changed = async (source: string) => {
      const random = (bytes: number) => new Uint8Array(bytes).fill(source.length);
      const clock = { nowMs: () => Date.UTC(2026, 2, 14, 1), offsetMin: () => 480 };
      const opened = await openDesk({ folder, person: 'NOK', clock, random });
      if (!opened.ok) throw new Error('must open');
      const hole = opened.value.get({ kind: 'hole', id: 'MBRC003' });
      const [collar = ''] = Object.keys(hole?.tables.collars ?? {});
      const changes = [{ patch: ['collars', collar] as const, set: { source } }];
      const parts = [{ document: { kind: 'hole', id: 'MBRC003' }, changes }];
      expect(opened.value.submit({ what: 'source', parts }).ok).toBe(true);
      await opened.value.close();
    };
    await changed(path);
    // Put right since: the tables say the name alone, the history still the path.
    await changed('program.csv');
    const refused = await packIn(folder);
    expect(refused).toMatchObject({ code: 2, out: '', outbox: [] });
    expect(refused.err).toContain('the history of hole MBRC003 holds a path of a computer');
    expect(refused.err).toContain('offsider pack --with-paths');
    expect((await packIn(folder, '2026-03-14')).outbox).toHaveLength(2);
    expect((await run(['pack', 'MBRC003', '--with-paths', '--project', folder])).code).toBe(0);
  });

  it('gives the same bytes for the same state and time', async () => {
    const [first, second] = [oneHole(), oneHole()];
    const [one, other] = [await packIn(first), await packIn(second)];
    expect(one.outbox).toEqual(other.outbox);
    for (const file of one.outbox)
      expect(
        readFileSync(join(first, 'outbox', file)).equals(readFileSync(join(second, 'outbox', file))),
      ).toBe(true);
    expect((await packIn(first)).outbox).toEqual(one.outbox);
  });

  it('says in the letter where each hole stands, what the check finds, which codes wait, controls and bags, and the bundle with its SHA-256', async () => {
    const folder = copyOfSample();
    const { outbox } = await packIn(folder);
    const [draft = '', bundle = ''] = outbox;
    const { text = '', subject, to } = await parsedMail(readFileSync(join(folder, 'outbox', draft)));
    expect(to).toEqual([{ name: '', address: 'camp@ochre-wren.example' }]);
    expect(subject).toBe('Mulgara Bend: MBRC001, MBRC002 and 6 more, 2026-03-14, from Nadia Okafor (NOK)');
    expect(text).toContain('MBRC001: complete, drilled 150 m, logged 150 m, planned to 150 m.');
    expect(text).toContain('MBRC007: planned to 120 m, not begun.');
    expect(text).toContain('MBRC002: 20–24 is not logged.');
    expect(text).toMatch(/What the check finds in these holes\n {2}(?:Nothing\.|\d+ × )/);
    expect(text).toMatch(
      /MBRC003: last bag MB\d{6} \([^)]+\), next MB\d{6} \([^)]+\), \d+ numbered bags left\./,
    );
    expect(text).toMatch(/standard K17: \d+ of 40 left\./);
    const bytes = readFileSync(join(folder, 'outbox', bundle));
    expect(text).toContain(`${bundle}, ${bytes.length} bytes`);
    expect(text).toContain(`SHA-256 ${createHash('sha256').update(bytes).digest('hex')}`);
    expect(text).toContain(`offsider receive ${bundle}`);
  });

  it('packs shifts by name or date, and refuses a name that the project has not, writing nothing', async () => {
    const folder = oneHole();
    const { out, outbox } = await packIn(folder, '2026-03-14', 'rc7_2026-03-14_day');
    expect(outbox).toHaveLength(2);
    expect(out).not.toContain('left unfinished');
    expect(out).toContain('Not finished:\n  RC7_2026-03-14_DAY: The shift is not ended.');
    const ended = await packIn(copyOfSample(), '2026-03-13');
    expect(ended.out).toContain('Not finished:\n  RC7_2026-03-13_DAY: No plod is recorded.');
    const before = hashes(folder);
    const refused = await packIn(folder, 'MBRC003', 'MBRC030');
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('MBRC030: the project has no such hole');
    expect(hashes(folder)).toEqual(before);
  });

  it('keeps a file that stands under the name of a draft', async () => {
    const folder = oneHole();
    const { outbox } = await packIn(folder);
    const draft = join(folder, 'outbox', outbox[0] ?? '');
    writeFileSync(draft, 'edited by the geologist\n');
    await packIn(folder);
    expect(readFileSync(draft, 'utf8')).toContain('X-Unsent: 1');
    const kept = readdirSync(join(folder, 'journal/kept')).map((name) =>
      readFileSync(join(folder, 'journal/kept', name), 'utf8'),
    );
    expect(kept).toContain('edited by the geologist\n');
  });
});

describe('there and back', () => {
  it('takes the rig’s bundle in at camp, from the mail or by itself, and an edited hole mailed back at the rig', async () => {
    const [rig, camp] = [oneHole(), oneHole()];
    await rockIs(rig, 'SHA');
    const [draft = '', bundle = ''] = (await packIn(rig, 'MBRC003', '2026-03-14')).outbox;
    const arrived = await receiveIn(camp, join(rig, 'outbox', draft));
    expect(arrived).toEqual({
      code: 0,
      out:
        'hole MBRC003: newer than ours, taken in: it changed 1 row\nshift RC7_2026-03-14_DAY: the same as ours\n' +
        'The copy of NOK holds 2 of 2 documents as they are here. What is packed for it next goes on from there.\n',
      err: '',
    });
    expect(rockOf(camp)).toBe('SHA');
    expect((await receiveIn(camp, join(rig, 'outbox', bundle))).out).toContain(
      'hole MBRC003: the same as ours',
    );

    const reply = fileWith(
      'reply.eml',
      mailWith(
        attached('MBRC003.json', editedByHand(camp, 'KOM')),
        attached('chips 45.jpg', 'x', 'image/jpeg'),
      ),
    );
    const back = await receiveIn(rig, reply);
    expect(back.code).toBe(0);
    expect(back.out).toBe(
      'hole MBRC003: newer than ours, taken in: it changed 1 row; one thing in it was edited outside offsider, which its history says\n' +
        'Left: reply.eml, chips 45.jpg: it is not a bundle and no file of a hole\n',
    );
    expect(rockOf(rig)).toBe('KOM');
    expect((await receiveIn(rig, reply)).out).toContain('hole MBRC003: the same as ours');
  });

  it('asks where the rig changed the same cell since: ours is kept, theirs is kept, and is said', async () => {
    const rig = oneHole();
    const reply = fileWith('reply.eml', mailWith(attached('MBRC003.json', editedByHand(rig, 'KOM'))));
    await rockIs(rig, 'SHA');
    const asked = await receiveIn(rig, reply);
    expect(asked.code).toBe(1);
    expect(asked.out).toContain('1 question to settle, nothing of theirs is lost');
    expect(asked.out).toContain(
      '  45–46, rock: ours shale (NOK 2026-03-14 09:30), theirs komatiite (edited outside offsider)\n',
    );
    expect(rockOf(rig)).toBe('SHA');
    expect((await packIn(rig, 'MBRC003')).out).toContain('Conflict between two copies: 45–46, rock');
  });

  it('leaves our settings where those of the bundle differ, and says so', async () => {
    const [rig, camp] = [oneHole(), oneHole()];
    writeFileSync(join(rig, 'logging.json'), `${readFileSync(join(rig, 'logging.json'), 'utf8')}\n`);
    const { outbox } = await packIn(rig, 'MBRC003');
    const before = hashes(camp);
    const { out, code } = await receiveIn(camp, join(rig, 'outbox', outbox[1] ?? ''));
    expect(code).toBe(0);
    expect(out).toContain('.zip, logging.json: it differs from ours, which was written by hand and is kept');
    expect(hashes(camp)).toEqual(before);
  });
});

describe('what arrives and is not sound', () => {
  it('is refused whole, one file after the other, and the folder is as it was', async () => {
    const [rig, camp] = [oneHole(), oneHole()];
    await rockIs(rig, 'SHA');
    const { outbox } = await packIn(rig);
    const bundle = readFileSync(join(rig, 'outbox', outbox[1] ?? ''));
    const flipped = Buffer.from(bundle).fill((bundle[9000] ?? 0) ^ 1, 9000, 9001);
    const sound = attached('MBRC003.json', readFileSync(join(rig, 'holes/MBRC003.json')));
    const files: readonly (readonly [name: string, bytes: Uint8Array])[] = [
      ['cut.zip', bundle.subarray(0, bundle.length - 400)],
      ['flipped.zip', flipped],
      ['climbs.zip', craftZip([{ name: '../../../evil.json', content: Buffer.from('{}') }])],
      [
        'link.zip',
        craftZip([
          {
            name: 'holes/MBRC003.json',
            content: Buffer.from('/etc/passwd'),
            central: { madeBy: 0x0314, attributes: 0xa1ff0000 },
          },
        ]),
      ],
      ['bomb.zip', craftZip([{ name: 'manifest.json', content: new Uint8Array(20 * 1024 * 1024) }])],
      ['empty.zip', craftZip([])],
      ['mail.eml', mailWith(sound, attached('camp.zip', bundle.subarray(5)))],
      ['tnef.eml', mailWith(sound, attached('winmail.dat', 'x'))],
      ['nothing.eml', mailWith()],
      ['text.eml', Buffer.from('hello')],
      ['hole.json', Buffer.from('{"kind":"hole","id":"../evil"}')],
    ];
    const before = hashes(camp);
    const { code, out, err } = await receiveIn(camp, ...files.map(([name, bytes]) => fileWith(name, bytes)));
    expect(code).toBe(1);
    expect(out).toBe('');
    for (const [name] of files) expect(err).toContain(name);
    expect(hashes(camp)).toEqual(before);
  });

  it('is refused where it is of another project', async () => {
    const [rig, camp] = [oneHole(), oneHole()];
    const settings = readFileSync(join(rig, 'project.json'), 'utf8');
    writeFileSync(join(rig, 'project.json'), settings.replace('"Mulgara Bend"', '"Mulgara West"'));
    const { outbox } = await packIn(rig, 'MBRC003');
    const before = hashes(camp);
    const { code, err } = await receiveIn(camp, join(rig, 'outbox', outbox[1] ?? ''));
    expect(code).toBe(1);
    expect(err).toContain('it is of the project Mulgara West; this one is Mulgara Bend');
    expect(hashes(camp)).toEqual(before);
  });

  it('is refused where a folder stands under its name', async () => {
    const camp = oneHole();
    mkdirSync(join(camp, 'in.zip'));
    expect((await receiveIn(camp, join(camp, 'in.zip'))).err).toContain('it is not a file');
  });

  it('names what the sender logs differently where its schema came along, and exits with 1', async () => {
    const theirs = oneHole();
    const ours = oneHole();
    const path = join(theirs, 'logging.json');
    const logging = JSON.parse(readFileSync(path, 'utf8'));
    const named = { code: 'DUN', label: 'dunite', look: 'olive green', pair: 'uj' };
    logging.lists = { ...logging.lists, rocks: { ...logging.lists?.rocks, codes: [named] } };
    writeFileSync(path, JSON.stringify(logging));
    const { outbox } = await packIn(theirs);
    const bundle = outbox.find((each) => !each.endsWith('.eml')) ?? '';
    const taken = await receiveIn(ours, join(theirs, 'outbox', bundle));
    expect(taken.code).toBe(1);
    expect(taken.out).toContain('logging.json: it differs from ours, which was written by hand and is kept');
    expect(taken.out).toContain('  code rocks DUN (dunite): only in theirs');
    expect(readFileSync(join(ours, 'logging.json'), 'utf8')).not.toContain('DUN');
  });
});
