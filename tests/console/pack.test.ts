import { describe, expect, it } from 'vitest';
import { parsedMail } from '../trust/packed.ts';
import { sampleFiles, sitDown } from './support/sitting.ts';

/** Lets what was begun come to its end. */
async function packedThen(sitting: Awaited<ReturnType<typeof sitDown>>): Promise<void> {
  for (let tries = 0; sitting.state().packed === undefined && tries < 400; tries += 1)
    await new Promise((done) => setTimeout(done, 5));
}

describe('one word at the end of the shift', () => {
  it('packs for camp, and shows where both files are, that nothing was sent, and what is not finished', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';pack MBRC003');
    expect(sitting.screen().join('\n')).toContain('Packing …');
    await packedThen(sitting);
    const shown = sitting.screen(80, 24).join('\n');
    const name = /outbox\/MULGARA-BEND_2026-03-14_0800_[0-9A-F]{8}\.eml/.exec(shown)?.[0] ?? '';
    expect(name).not.toBe('');
    expect(shown).toContain(name.replace('.eml', '.zip'));
    expect(shown).toContain('Nothing has been sent.');
    expect(shown).toContain('Not finished');
    expect(shown).toContain('MBRC003: 46–54 is not logged.');
    sitting.press('escape');
    expect(sitting.state().screen).toMatchObject({ name: 'log', hole: 'MBRC003' });
  });

  it('packs no path of a computer that an earlier version left in a history, unless that is said', async () => {
    const files = sampleFiles();
    const sitting = await sitDown(files);
    const hole = { kind: 'hole', id: 'MBRC003' } as const;
    const [collar = ''] = Object.keys(sitting.hole('MBRC003').tables.collars ?? {});
    const source = '/home/kim/program.csv';
    const changes = [{ patch: ['collars', collar] as const, set: { source } }];
    const done = sitting.desk.submit({ what: 'source', parts: [{ document: hole, changes }] });
    if (!done.ok) throw new Error(done.problem);
    await done.durable;
    sitting.enter(';pack MBRC003');
    await packedThen(sitting);
    const shown = sitting.screen(80, 24).join(' ').replaceAll(/\s+/g, ' ');
    expect(shown).toContain('Not packed: the history of hole MBRC003 holds a path of a computer');
    expect(shown).toContain(';pack with paths');
    sitting.press('escape');
    sitting.enter(';pack MBRC003 with paths');
    await packedThen(sitting);
    expect(sitting.state().packed).toMatchObject({ ok: true, holes: 1 });
  });

  it('does not call a shift that is going on finished', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';pack 2026-03-14');
    await packedThen(sitting);
    const shown = sitting.screen(80, 24).join('\n');
    expect(shown).toContain('RC7_2026-03-14_DAY: The shift is not ended.');
    expect(shown).not.toContain('left unfinished');
  });

  it('lays down a draft that a mail program reads, with the rows of this sitting in it', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter('p3');
    sitting.enter(';pack MBRC003');
    await packedThen(sitting);
    const packed = sitting.state().packed;
    if (packed?.ok !== true) return expect.fail(packed?.problem);
    const mail = await parsedMail(await sitting.file(packed.drafts[0] ?? ''));
    expect(mail.text).toContain('MBRC003: drilling, drilled 54 m, logged 47 m, planned to 120 m.');
    expect(mail.attachments.map((each) => `outbox/${each.filename}`)).toEqual([packed.bundle]);
  });

  it('packs everything from the list of holes, and everything where no hole is named', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.press('f10');
    sitting.type('p');
    await packedThen(sitting);
    expect(sitting.state().packed).toMatchObject({ ok: true, holes: 8 });
    sitting.press('escape');
    expect(sitting.state().screen.name).toBe('holes');
  });

  it('says where a name is not a hole, and packs nothing', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter(';pack MBRC030');
    expect(sitting.state().message?.text).toBe(
      'No hole and no shift is called MBRC030. ;pack alone packs everything.',
    );
    expect(sitting.state().screen.name).toBe('log');
  });
});
