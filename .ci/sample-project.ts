// Writes the sample project's holes, shifts and dispatch again, and the laboratory's papers: an invented explorer, logged through the program itself. `--into <folder>` writes elsewhere.
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { endingDecision } from '../src/acts/decision.ts';
import { dispatchNamed, makeDispatch, passOn, proposeDispatch } from '../src/acts/dispatch.ts';
import { recordPhotos } from '../src/acts/photo.ts';
import { plannedHole } from '../src/commands/program/plan-program.ts';
import { readProgram } from '../src/commands/program/read-program.ts';
import { formatFinding } from '../src/finding/finding.ts';
import { recordCollar, recordLineUp, recordRun } from '../src/hole/commands/direction.ts';
import { planHole } from '../src/hole/commands/plan-hole.ts';
import { endHole, startDrilling, stopDrilling } from '../src/hole/commands/states.ts';
import { headerOf, holeNouns, planOf } from '../src/hole/hole.ts';
import { type Depth, depthFromMetres } from '../src/quantity/depth.ts';
import type { DocumentName } from '../src/record/document.ts';
import { dispatchOf } from '../src/sampling/dispatch/dispatch-noun.ts';
import { startShift } from '../src/shift/commands.ts';
import { endShiftAt } from '../src/shift/entry-changes.ts';
import { recordPlod } from '../src/shift/plod-commands.ts';
import { headsOf } from '../src/standing/heads.ts';
import { traysOf } from '../src/standing/trays.ts';
import { gridByCode } from '../src/survey/norths/grids.ts';
import { papersOf } from './sample-project/laboratory.ts';
import {
  granted,
  make,
  makerNow,
  openSitting,
  playLines,
  type Sitting,
  standing,
  startNow,
} from './sample-project/sitting.ts';

const NAME = 'mulgara-bend';
const BY_HAND = ['project.json', 'logging.json', 'program.csv', 'schemas'];
const PAPERS = 'laboratory';
const source = resolve(import.meta.dirname, '..', 'sample-projects', NAME);
const hole = (id: string): DocumentName => ({ kind: 'hole', id });

/** Writes what the program makes of the sample into a folder, the files made by hand beside it. */
export async function writeSample(target: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'offsider-sample-'));
  try {
    for (const file of BY_HAND) cpSync(join(source, file), join(folder, file), { recursive: true });
    const sitting = await openSitting(folder);
    await tellStory(sitting);
    writePapers(sitting, folder);
    const closed = await sitting.desk.close();
    if (!closed.ok) throw new Error(closed.problem);
    mkdirSync(target, { recursive: true });
    if (target !== source)
      for (const file of BY_HAND) cpSync(join(source, file), join(target, file), { recursive: true });
    for (const room of ['holes', 'shifts', 'dispatches', PAPERS]) {
      if (existsSync(join(target, room))) rmSync(join(target, room), { recursive: true });
      cpSync(join(folder, room), join(target, room), { recursive: true });
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function tellStory(sitting: Sitting): Promise<void> {
  await planProgram(sitting);
  await firstDay(sitting);
  await secondDay(sitting);
  await thirdDay(sitting);
}

/** The evening before: the program comes in. */
async function planProgram(sitting: Sitting): Promise<void> {
  const text = readFileSync(join(source, 'program.csv'), 'utf8');
  const grid = gridByCode(7851);
  const context = { file: 'program.csv', grid, settings: sitting.project.survey, taken: new Set<string>() };
  const read = readProgram(text, context);
  if (read.findings.length > 0) throw new Error(read.findings.map(formatFinding).join('\n'));
  const from = { grid: grid?.name ?? '', source: 'program.csv' };
  for (const planned of read.holes) {
    const { document, made } = plannedHole(sitting.project, planned, from, makerNow(sitting));
    await make(sitting, document, made);
  }
}

async function firstDay(sitting: Sitting): Promise<void> {
  await beginShift(sitting, '2026-03-12');
  await setUp(sitting, 'MBRC001', { time: '06:02', azimuthDeg: 270.2, dipDeg: -59.9, compassDeg: 269.5 });
  await playLines(sitting, hole('MBRC001'));
  await handheld(sitting, 'MBRC001', [412_481.6, 6_002_198.9, 431.9]);
  await end(
    sitting,
    'MBRC001',
    'Ines Falk called: planned depth reached, 22 m barren, wet from 138 m. End here.',
  );
  await finishShift(sitting, 'move');
  await plod(sitting);
}

async function secondDay(sitting: Sitting): Promise<void> {
  await beginShift(sitting, '2026-03-13');
  await setUp(sitting, 'MBRC002', { time: '05:58', azimuthDeg: 269.8, dipDeg: -60.2, compassDeg: 269 });
  await playLines(sitting, hole('MBRC002'));
  const bogged = standing(sitting, hole('MBRC002'));
  const because = 'rods bogged in swelling clay, pulled back to 12 m and out';
  const drilled = headsOf(bogged).drilledMm;
  await make(
    sitting,
    hole('MBRC002'),
    granted(stopDrilling(bogged, 'abandoned', because, drilled, makerNow(sitting))),
  );
  await redrill(sitting, 'MBRC002', 'MBRC002A', because);
  await setUp(sitting, 'MBRC002A', { time: '08:12', azimuthDeg: 270.1, dipDeg: -60, compassDeg: 269.5 });
  await playLines(sitting, hole('MBRC002A'));
  await end(sitting, 'MBRC002A', 'Planned depth reached, twelve metres barren behind the lode.');
  await finishShift(sitting, 'move');
}

async function thirdDay(sitting: Sitting): Promise<void> {
  await beginShift(sitting, '2026-03-14');
  await setUp(sitting, 'MBRC003', { time: '06:05', azimuthDeg: 269.9, dipDeg: -60.1, compassDeg: 269.5 });
  await playLines(sitting, hole('MBRC003'));
  for (const id of ['MBRC001', 'MBRC002', 'MBRC002A', 'MBRC003']) await photographTrays(sitting, id);
  await sendFirstHole(sitting);
}

/** The trays that are done were photographed wet; the pictures are registered by their names. */
async function photographTrays(sitting: Sitting, id: string): Promise<void> {
  const document = standing(sitting, hole(id));
  const photos = traysOf(sitting.project, document)
    .filter((each) => each.done)
    .map(({ tray }) => ({ tray, file: `${id}_tray${tray}.jpg` }));
  await make(sitting, hole(id), granted(recordPhotos(sitting.project, document, photos, makerNow(sitting))));
}

/** The freight run calls: the bags of the first hole go, made up by the geologist and taken by the driver of the truck. */
async function sendFirstHole(sitting: Sitting): Promise<void> {
  const { desk, project } = sitting;
  const bags = holeNouns(standing(sitting, hole('MBRC001')), 'bags').flatMap((bag) =>
    bag.kind === 'spoiled' ? [] : [bag.number],
  );
  const said = { bags, firstSeal: 'S04101' };
  const proposed = granted(proposeDispatch(project, desk.documents().values(), said, makerNow(sitting)));
  const { document, made } = makeDispatch(proposed, makerNow(sitting));
  await make(sitting, document, made);
  const handed = { to: 'Orla Venn, freight', sacks: proposed.sacks.length, sealsWhole: true };
  const passed = passOn(standing(sitting, document), handed, makerNow(sitting));
  await make(sitting, passed.document, passed.made);
}

/** What the laboratory will send for that dispatch: its receipt and its certificate, to be taken in by whoever tries the program. */
function writePapers(sitting: Sitting, folder: string): void {
  const dispatch = dispatchOf(granted(dispatchNamed(sitting.desk.documents().values(), undefined)));
  const first = standing(sitting, hole('MBRC001'));
  const papers = papersOf(dispatch, first, holeNouns(first, 'bags'), sitting.project.sampling);
  mkdirSync(join(folder, PAPERS));
  writeFileSync(join(folder, PAPERS, 'receipt.csv'), papers.receipt);
  writeFileSync(join(folder, PAPERS, 'WA26-0417.csv'), papers.certificate);
}

async function beginShift(sitting: Sitting, date: string): Promise<void> {
  sitting.clock.set(date, '05:32');
  const id = `RC7_${date}_DAY`;
  const header = startShift({
    rig: 'RC7',
    date,
    name: 'day',
    startsAt: sitting.desk.now(),
    crew: ['Mick Tarrant', 'Dee Raun', 'Joss Penhale'],
    geologist: 'Nadia Okafor',
  });
  await make(sitting, { kind: 'shift', id }, header);
  await startNow(sitting, 'prestart');
}

async function finishShift(sitting: Sitting, last: string): Promise<void> {
  sitting.clock.pass(600);
  await startNow(sitting, last);
  sitting.clock.set(sitting.clock.date(), '17:40');
  const name = { kind: 'shift', id: `RC7_${sitting.clock.date()}_DAY` };
  await make(sitting, name, granted(endShiftAt(standing(sitting, name), sitting.desk.now())));
}

interface SetUp {
  readonly time: string;
  readonly azimuthDeg: number;
  readonly dipDeg: number;
  readonly compassDeg: number;
}

/** The rig is lined up by the sight pegs and checked; drilling starts, and the gyro's run with it. */
async function setUp(sitting: Sitting, id: string, set: SetUp): Promise<void> {
  sitting.clock.set(sitting.clock.date(), set.time);
  await startNow(sitting, 'line-up', id);
  sitting.clock.pass(900);
  const maker = makerNow(sitting);
  const lineUp = recordLineUp(
    {
      azimuthDeg: set.azimuthDeg,
      azimuthNorth: 'grid',
      dipDeg: set.dipDeg,
      way: 'sight pegs',
      accepted: true,
      readings: [
        { kind: 'compass', deg: set.compassDeg, distanceMm: 22_000 },
        { kind: 'compass', deg: set.compassDeg + 0.5, distanceMm: 30_000 },
        { kind: 'clinometer', deg: set.dipDeg },
      ],
      cautionsReadBy: 'NOK',
      at: maker.at,
      by: maker.by,
    },
    maker,
  );
  await make(sitting, hole(id), lineUp);
  const drilling = { method: 'RC', rig: 'RC7', fromMm: 0 as Depth, bitMm: 139.7, startedAt: maker.at };
  await make(
    sitting,
    hole(id),
    granted(startDrilling(standing(sitting, hole(id)), drilling, makerNow(sitting))),
  );
  await startNow(sitting, 'drilling', id);
  const run = {
    tool: 'gyro 2',
    toolClass: 'north-seeking gyro',
    north: 'true',
    pass: 'single',
    inside: 'rods',
    toolOffsetMm: 0,
    operator: 'Mick Tarrant',
    at: maker.at,
    rank: 60,
  } as const;
  await make(sitting, hole(id), recordRun(run, [], makerNow(sitting)));
}

async function handheld(sitting: Sitting, id: string, at: readonly [number, number, number]): Promise<void> {
  const [eastingMm, northingMm, elevationMm] = at.map((metres) => Math.round(metres * 1000));
  const maker = makerNow(sitting);
  const collar = recordCollar(
    {
      rank: 'handheld',
      eastingMm: eastingMm ?? 0,
      northingMm: northingMm ?? 0,
      elevationMm: elevationMm ?? 0,
      grid: gridByCode(7851)?.name ?? '',
      source: 'handheld GPS, 4 m',
      at: maker.at,
      by: maker.by,
    },
    maker,
  );
  await make(sitting, hole(id), collar);
}

async function end(sitting: Sitting, id: string, reason: string): Promise<void> {
  const document = standing(sitting, hole(id));
  const { at, by } = makerNow(sitting);
  const depthMm = headsOf(document).drilledMm;
  const decision = granted(endingDecision(sitting.project, document, { depthMm, reason, at, by }));
  const left = holeNouns(document, 'collarStates').at(-1)?.state ?? 'open';
  await make(
    sitting,
    hole(id),
    granted(endHole(document, decision, { state: left, at, by }, makerNow(sitting))),
  );
}

async function redrill(sitting: Sitting, parent: string, id: string, because: string): Promise<void> {
  const of = standing(sitting, hole(parent));
  const plan = planOf(of);
  const [collar] = holeNouns(of, 'collars');
  if (plan === undefined || collar === undefined) throw new Error(`${parent} has no plan`);
  const maker = makerNow(sitting);
  const header = {
    ...headerOf(of),
    name: id,
    state: 'planned' as const,
    unplanned: true as const,
    parent: { hole: parent, reason: 'redrill' as const, because },
  };
  const { stateReason: _left, plannedName: _planned, ...own } = header;
  const beside = {
    ...collar,
    eastingMm: collar.eastingMm - 4000,
    source: '4 m west of the abandoned hole',
    at: maker.at,
    by: maker.by,
  };
  await make(sitting, hole(id), planHole({ header: own, plan, collar: beside }, maker));
}

/** The driller's sheet of the first day comes in on the next evening, an hour of conditioning heavier than the own record. */
async function plod(sitting: Sitting): Promise<void> {
  const name = { kind: 'shift', id: 'RC7_2026-03-12_DAY' };
  const lines = [
    { activity: 'prestart', minutes: 30 },
    { activity: 'line-up', minutes: 20, hole: 'MBRC001' },
    { activity: 'drilling', minutes: 360, hole: 'MBRC001', fromMm: 0 as Depth, toMm: depthFromMetres(150) },
    { activity: 'survey', minutes: 60, hole: 'MBRC001', shots: 6 },
    { activity: 'conditioning', minutes: 90, hole: 'MBRC001' },
    { activity: 'crib', minutes: 30 },
    { activity: 'move', minutes: 90, used: [{ item: 'hammer bit', count: 1 }] },
  ];
  const sheet = { sheet: '0412', receivedAt: sitting.desk.now(), from: 'Mick Tarrant' };
  await make(sitting, name, granted(recordPlod(standing(sitting, name), sheet, lines, makerNow(sitting))));
}

if (process.argv[1] === import.meta.filename) {
  const { values } = parseArgs({ options: { into: { type: 'string' } } });
  await writeSample(resolve(values.into ?? source));
}
