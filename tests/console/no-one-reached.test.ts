import { describe, expect, it } from 'vitest';
import { checkHole } from '../../src/check/check-hole.ts';
import { letterFor } from '../../src/handover/letter/letter.ts';
import { headerOf, holeNouns } from '../../src/hole/hole.ts';
import { readReason } from '../../src/shorthand/reason.ts';
import { type Sitting, sampleFiles, sitDown } from './support/sitting.ts';

const HOLE = 'MBRC003';
const said = (sitting: Sitting) => sitting.state().message?.text ?? '';
const flat = (sitting: Sitting) =>
  sitting
    .screen(80, 24)
    .join(' ')
    .replaceAll(/[│\s]+/g, ' ');
const decision = (sitting: Sitting) => holeNouns(sitting.hole(HOLE), 'decisions').at(-1);
const ASKED =
  'The advice is ASK, and no one is named as called. Begin with who was: called Ines Falk: zone closed off. If no one was reached Enter again ends it and records that.';

/** At the last question of ending the sample hole, whose void rule can't tell and asks. */
async function atReason(): Promise<Sitting> {
  const sitting = await sitDown(sampleFiles());
  sitting.press('f12');
  for (const answer of ['', '', 'c']) sitting.enter(answer);
  expect(sitting.state().prompt).toMatchObject({ kind: 'ending', step: 'reason' });
  return sitting;
}

describe('the end of a hole whose advice is ask', () => {
  it('is asked about once more where no one is named as called, and then recorded as no one reached', async () => {
    const sitting = await atReason();
    sitting.enter('nobody picks up');
    expect(said(sitting)).toBe(ASKED);
    expect(flat(sitting)).toContain('If no one was reached Enter again ends it and records that.');
    expect(headerOf(sitting.hole(HOLE)).state).toBe('drilling');
    expect(sitting.state().prompt).toMatchObject({ draft: { text: 'nobody picks up' } });
    sitting.press('enter');
    expect(headerOf(sitting.hole(HOLE)).state).toBe('complete');
    expect(decision(sitting)).toMatchObject({
      verdict: 'ask',
      reason: 'no one was reached: nobody picks up',
    });
    expect(decision(sitting)).not.toHaveProperty('called');
  });

  it.each(['called Ines Falk: zone closed off', 'Ines Falk called: zone closed off'])(
    'ends at once with "%s", and check and letter say who was called, not that it went against the advice',
    async (reason) => {
      const sitting = await atReason();
      sitting.enter(reason);
      expect(headerOf(sitting.hole(HOLE)).state).toBe('complete');
      expect(decision(sitting)).toMatchObject({ called: 'Ines Falk', reason: 'zone closed off' });
      const { project, documents } = sitting.state();
      const findings = checkHole(project, sitting.hole(HOLE), documents.values());
      expect(findings).toContainEqual(
        expect.objectContaining({
          code: 'termination-asked-and-called',
          problem: expect.stringMatching(/was "ask", and Ines Falk was called$/),
        }),
      );
      const { text } = letterFor({
        project,
        documents: [...documents.values()],
        packed: [sitting.hole(HOLE)],
        findings,
        bundle: {
          name: 'X',
          bytes: new Uint8Array(),
          sha256: '0',
          at: sitting.state().now,
          manifest: { by: 'NOK', files: [] },
        } as never,
      });
      expect(text).toMatch(/1 × note: the advice was ask, and someone was called: MBRC003, \S+ m: Ines Falk/);
      expect(text).not.toContain('against the advice');
    },
  );

  it('takes no call to the signer or to no one', async () => {
    const sitting = await atReason();
    for (const name of ['NOK', 'nobody']) {
      sitting.enter(`called ${name}: zone closed off`);
      expect(said(sitting)).toMatch(/is you: it takes someone else|names no one/);
      expect(headerOf(sitting.hole(HOLE)).state).toBe('drilling');
      sitting.press(...Array.from({ length: 40 }, () => 'backspace'));
    }
  });
});

it('a reason names who was called before or behind the word', () => {
  expect(readReason('Ines Falk called: zone closed')).toEqual({ called: 'Ines Falk', reason: 'zone closed' });
  expect(readReason('called Ines Falk: zone closed')).toEqual({ called: 'Ines Falk', reason: 'zone closed' });
  expect(readReason('so called: zone')).toEqual({ reason: 'so called: zone' });
  expect(readReason('called off by the driller')).toEqual({ reason: 'called off by the driller' });
});
