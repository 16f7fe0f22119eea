import { describe, expect, it } from 'vitest';
import type { Project } from '../../src/project/project.ts';
import { crewNote } from '../../src/standing/crew-note.ts';
import { dangersMet } from '../../src/standing/dangers.ts';
import { type Sitting, sampleFiles, sitDown } from '../console/support/sitting.ts';

const HOLE = 'MBRC003';
const met = (sitting: Sitting): readonly string[] =>
  dangersMet(sitting.state().project.schema, sitting.hole(HOLE));

describe('the dangers that a hole met', () => {
  it('are its voids and cavities first, then lost return, each with its metres joined', async () => {
    const sitting = await sitDown(sampleFiles());
    const before = met(sitting);
    for (const line of ['vr', 'vr=', 'nr', ';cavity 50-51']) sitting.enter(line);
    const [cavity, hollow, lost, ...others] = met(sitting);
    expect([cavity, hollow, lost]).toEqual([
      'CAVITY felt by the driller 50–51',
      'void or old workings (void) 46–48',
      'no return 48–49',
    ]);
    expect(others).toEqual(before);
  });

  it('stand first in the note for the next crew, of a hole that is over too', async () => {
    const sitting = await sitDown(sampleFiles());
    sitting.enter('vr');
    const project: Project = sitting.state().project;
    const documents = [...sitting.state().documents.values()].map((each) =>
      each.id === HOLE
        ? {
            ...each,
            tables: {
              ...each.tables,
              hole: { hole: { ...each.tables.hole?.hole, state: 'complete' } },
            },
          }
        : each,
    );
    const [first] = crewNote(project, documents as typeof documents, 'RC7', sitting.state().now);
    expect(first?.title).toBe('Dangers met');
    expect(first?.lines.join('\n')).toContain(`${HOLE}: void or old workings (void) 46–47`);
  });
});
