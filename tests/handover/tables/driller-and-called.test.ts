import { expect, it } from 'vitest';
import { EVENTS } from '../../../src/handover/tables/events.ts';
import { sampleFiles, sitDown } from '../../console/support/sitting.ts';

it('the events of a hole have what the driller felt, and who was called about a decision', async () => {
  const sitting = await sitDown(sampleFiles());
  sitting.enter(';cavity 50-51 Mick Tarrant');
  sitting.enter(';extend called Ines Falk: to 132, zone open');
  const { project, documents, now } = sitting.state();
  const all = [...documents.values()];
  const rows = EVENTS.rows({ project, documents: all, of: all, now });
  const here = rows.filter((row) => row.hole === 'MBRC003').slice(-2);
  expect(here.map(({ kind, words, by }) => [kind, words, by])).toEqual([
    ['extended', 'advice then: ask; to 132 m; called Ines Falk; to 132, zone open', 'NOK'],
    ['cavity felt by the driller', '50–51 m, Mick Tarrant', 'NOK'],
  ]);
});
