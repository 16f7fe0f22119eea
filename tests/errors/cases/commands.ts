import { writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { vi } from 'vitest';
import { readCsvFile } from '../../../src/commands/csv-file.ts';
import { enter } from '../../../src/commands/enter.ts';
import {
  folderTaken,
  holeUnknown,
  lineAsked,
  lineNotTaken,
  wrongUse,
} from '../../../src/commands/findings.ts';
import { holes } from '../../../src/commands/holes.ts';
import { newProject } from '../../../src/commands/new-project.ts';
import { readProgram } from '../../../src/commands/program/read-program.ts';
import { resplit } from '../../../src/commands/resplit.ts';
import type { Outside } from '../../../src/desk/outside.ts';
import type { Finding, FindingKind } from '../../../src/finding/finding.ts';
import { resplitRefused } from '../../../src/sampling/findings.ts';
import { copyOfSample, freshFolder, hear, SAMPLE } from '../../commands/support/outside.ts';
import { type ErrorCase, findingsIn, given } from '../error-case.ts';

const HEAD = 'hole,easting,northing,elevation,azimuth,north,dip,depth\n';

/** What a command says of a kind, given a text from a pipe. */
function saidBy(
  kind: FindingKind,
  input: string,
  run: (outside: Outside) => Promise<number>,
  stdin = '',
): ErrorCase {
  return given(kind.code, input, async (): Promise<readonly Finding[]> => {
    const at = vi.spyOn(kind, 'at');
    try {
      await run(hear(stdin).outside);
      return at.mock.results.map((result) => result.value as Finding);
    } finally {
      at.mockRestore();
    }
  });
}

const entering = (kind: FindingKind, input: string, line: string): ErrorCase =>
  saidBy(
    kind,
    input,
    (outside) => enter(outside, { folder: copyOfSample(), hole: 'MBRC003', keepGoing: false }),
    `${line}\n`,
  );

const program = (code: string, input: string, text: string): ErrorCase =>
  given(code, input, () => {
    const context = {
      file: 'program.csv',
      grid: undefined,
      settings: { programReachM: 20_000 },
      taken: new Set<string>(),
    };
    return readProgram(text, context).findings;
  });

/** Errors that a command gives by itself. */
export const COMMAND_CASES: readonly ErrorCase[] = [
  saidBy(wrongUse, 'a style that no one knows', (outside) =>
    newProject(outside, { folder: join(freshFolder(), 'west'), style: 'no-such-style', keepGoing: false }),
  ),
  saidBy(holeUnknown, 'the history of a hole that is not there', (outside) =>
    holes(outside, { folder: SAMPLE, json: false, history: 'ZQRC999' }),
  ),
  saidBy(folderTaken, 'a new project over another', (outside) =>
    newProject(outside, {
      folder: relative(process.cwd(), SAMPLE),
      style: 'orogenic-gold',
      keepGoing: false,
    }),
  ),
  entering(lineNotTaken, 'a pair that types nothing', 'zz'),
  entering(lineAsked, 'ten times the pyrite of the row above', 'py20'),
  saidBy(resplitRefused, 'single metres in a project that has no rule for them', (outside) =>
    resplit(outside, { folder: SAMPLE, hole: 'MBRC001', take: false, csv: false }),
  ),
  given('table-not-read', 'a certificate saved with another alphabet', async () => {
    const file = join(freshFolder(), 'certificate.csv');
    writeFileSync(file, Buffer.from('Sample,Au (\xb5g/g)\n', 'latin1'));
    return findingsIn(await readCsvFile(file));
  }),
  program('program-unreadable', 'a quotation mark left open', `${HEAD}"ZQRC001,1,2,3\n`),
  program('program-line', 'a dip that points up', `${HEAD}ZQRC001,500000,6500000,400,270,true,60,120\n`),
];
