import type { Bag } from '../../../src/hole/bags.ts';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { checkContaminated, checkHygiene } from '../../../src/sampling/recovery/hygiene.ts';
import { readMass } from '../../../src/sampling/recovery/mass-typed.ts';
import { type DrilledMetre, recoveryOf } from '../../../src/sampling/recovery/recovery.ts';
import { checkRecovery } from '../../../src/sampling/recovery/recovery-check.ts';
import { checkUnmended } from '../../../src/sampling/rod/unmended.ts';
import { checkRatesSoFar } from '../../../src/sampling/scheme/rates-so-far.ts';
import { checkScheme } from '../../../src/sampling/scheme/scheme-check.ts';
import { checkStock } from '../../../src/sampling/scheme/stock.ts';
import type { SamplingSettings } from '../../../src/sampling/settings.ts';
import { type BaggedHole, checkBags } from '../../../src/sampling/stream/bags-check.ts';
import { checkUnbagged, issue } from '../../../src/sampling/stream/issue.ts';
import { checkNoSamples, withNoSamples } from '../../../src/sampling/stream/no-sample.ts';
import { checkTrays } from '../../../src/sampling/trays/trays.ts';
import { atCollar, NOON, primary, SETTINGS, sampling, withSlots } from '../../sampling/build.ts';
import { type ErrorCase, findingsIn, given } from '../error-case.ts';

const STATE = { ...atCollar('ZQ000121', 'ZQ000200'), drilledMm: 30_000 };
const CLEAN: BaggedHole = { ...STATE, hole: 'ZQRC004', bags: issue(sampling(), STATE) };
const FIRST = CLEAN.bags[0] as Bag;

/** A case of bags of holes. */
const bags = (code: string, input: string, ...holes: readonly BaggedHole[]): ErrorCase =>
  given(code, input, () => checkBags(sampling(), holes));
const more = (...added: readonly Bag[]): BaggedHole => ({ ...CLEAN, bags: [...CLEAN.bags, ...added] });
const changed = (number: string, said: Partial<Bag>): BaggedHole => ({
  ...CLEAN,
  bags: CLEAN.bags.map((bag) => (bag.number === number ? { ...bag, ...said } : bag)),
});
const run = (first: string, last: string): BaggedHole => ({
  ...CLEAN,
  bags: [],
  bagRuns: [{ first, last, rig: 'Rig 1', at: NOON }],
});

const BAG_CASES: readonly ErrorCase[] = [
  bags('number-used-twice', 'a calico in two holes', CLEAN, {
    ...CLEAN,
    hole: 'ZQRC005',
    bags: [FIRST],
    bagRuns: [],
  }),
  bags('bag-run-overlap', 'one bag run for two holes', CLEAN, { ...CLEAN, hole: 'ZQRC005', bags: [] }),
  bags('bag-run-outside', 'a bag run past the numbers of its rig', run('ZQ009990', 'ZQ010010')),
  bags('bag-run-backwards', 'a bag run that ends before its start', run('ZQ000010', 'ZQ000001')),
  bags('metre-bagged-twice', 'a metre in two bags', more(primary('ZQ000199', 0, 1))),
  bags(
    'control-number-as-metre',
    'a metre in the bag of a duplicate',
    changed('ZQ000133', { kind: 'primary', fromMm: FIRST.fromMm, toMm: FIRST.toMm }),
  ),
  bags('duplicate-without-primary', 'a duplicate of no bag', changed('ZQ000133', { of: 'ZQ000777' })),
  bags('duplicate-not-its-twin', 'a duplicate of another metre', changed('ZQ000133', { of: 'ZQ000130' })),
  bags('bag-not-of-this-hole', 'a bag of no run of the hole', more(primary('ZQ000450', 30, 31))),
  bags('bag-number-not-ours', 'a number of another form', more(primary('ZQ45', 30, 31))),
];

const scheme = (code: string, input: string, said: Partial<SamplingSettings>): ErrorCase =>
  given(code, input, () => checkScheme(sampling(said)));
const slots = (code: string, input: string, ...list: SamplingSettings['controls']['slots']): ErrorCase =>
  given(code, input, () => checkScheme(withSlots(list)));
const controls = (said: Partial<SamplingSettings['controls']>) => ({
  controls: { ...SETTINGS.controls, ...said },
});

const SCHEME_CASES: readonly ErrorCase[] = [
  slots(
    'scheme-reserved-twice',
    'two slots that meet',
    { every: 20, at: 0, kind: 'standard' },
    { every: 30, at: 10, kind: 'blank' },
  ),
  slots('scheme-slot-never', 'the 20th of every 20, counted from 0', { every: 20, at: 20, kind: 'standard' }),
  slots('scheme-slot-usual', 'a usual kind that is none of the slot', {
    every: 20,
    at: 1,
    oneOf: ['blank', 'standard'],
    usually: 'field duplicate',
  }),
  slots('scheme-rate-unusual', 'one standard in 200, and nothing else', {
    every: 200,
    at: 0,
    kind: 'standard',
  }),
  scheme('scheme-rate-short', '5 % of standards wanted', controls({ wanted: { standardPercent: 5 } })),
  scheme('control-without-material', 'no standard on site', controls({ standards: [] })),
  scheme('number-block', 'numbers that run backwards', {
    numbers: { ...SETTINGS.numbers, blocks: [{ rig: 'Rig 1', first: 'ZQ000500', last: 'ZQ000001' }] },
  }),
  scheme('number-prefixes', 'a prefix that begins another', {
    numbers: { ...SETTINGS.numbers, prefixes: ['ZQ', 'ZQ1'] },
  }),
  given('rate-behind', 'no blank beside 100 samples', () =>
    checkRatesSoFar(
      sampling(controls({ wanted: { blankPercent: 5 } })),
      Array.from({ length: 100 }, (_, index) => primary(`ZQ${index}`, index, index + 1)),
    ),
  ),
  given('control-stock', '36 of 40 sachets used', () =>
    checkStock(
      sampling(),
      Array.from(
        { length: 36 },
        (_, index) => ({ number: `ZQ${index}`, kind: 'standard', material: 'low' }) as const,
      ),
    ),
  ),
];

/** A metre of 139.7 mm hole in 2.7 g/cm³. */
const metre = (fromM: number, fact: DrilledMetre['fact']) =>
  recoveryOf({ fromMm: fromM * 1000, toMm: fromM * 1000 + 1000, bitMm: 139.7, densityGcm3: 2.7, fact });
const drilled = (code: string, input: string, ...metres: readonly ReturnType<typeof metre>[]): ErrorCase =>
  given(code, input, () => checkRecovery(sampling(), 'ZQRC004', metres));
const hygiene = (
  code: string,
  input: string,
  rod: Partial<Parameters<typeof checkHygiene>[1][number]>,
): ErrorCase =>
  given(code, input, () => checkHygiene('ZQRC004', [{ rod: 2, fromMm: 6000, toMm: 12_000, ...rod }], 1));
const tray = (code: string, input: string, toM: number, photo: object): ErrorCase =>
  given(code, input, () =>
    checkTrays(sampling(), {
      name: 'ZQRC004',
      startMm: 0,
      isOver: false,
      toMm: 25_000,
      trays: [{ tray: 1, fromMm: depthFromMetres(0), toMm: depthFromMetres(toM), ...photo }],
    }),
  );
const mass = (code: string, input: string, typed: string): ErrorCase =>
  given(code, input, () => findingsIn(readMass(typed, 'calico')));

const SPLITTER_CASES: readonly ErrorCase[] = [
  drilled('recovery-low', '20 kg of a metre', metre(4, { bulkG: 20_000 })),
  drilled('recovery-high', '45 kg of a metre', metre(4, { bulkG: 45_000 })),
  drilled('split-off-target', 'half of the target', metre(4, { splitG: 1500 })),
  given('mismatch-unmended', 'a rod whose bags did not agree', () =>
    checkUnmended('ZQRC004', [
      {
        ...{ at: NOON, rod: 2, depthMm: depthFromMetres(12), lastBag: '133', bags: 6 },
        ...{ mismatch: 'skipped', unmended: true },
      },
    ]),
  ),
  given('metres-without-sample', 'a metre without return', () =>
    checkNoSamples(
      'ZQRC004',
      withNoSamples([primary('ZQ000125', 4, 5)], [{ fromMm: depthFromMetres(4), toMm: depthFromMetres(5) }]),
    ),
  ),
  given('metres-without-a-bag', 'a rod below the last label', () =>
    checkUnbagged(sampling(), 'ZQRC004', { ...atCollar('ZQ000101', 'ZQ000104'), drilledMm: 6000 }),
  ),
  given('metres-contaminated', 'a contaminated metre', () =>
    checkContaminated('ZQRC004', [{ fromMm: 4000, toMm: 5000, flags: ['contaminated'] }]),
  ),
  drilled('metres-wet', 'one wet metre', metre(4, { moisture: 'wet' })),
  drilled('wet-run', 'three wet metres', ...[4, 5, 6].map((fromM) => metre(fromM, { moisture: 'wet' }))),
  drilled(
    'recovery-trend',
    'less with every metre',
    ...Array.from({ length: 40 }, (_, fromM) => metre(fromM, { bulkG: 41_385 - 150 * fromM })),
  ),
  hygiene('hygiene-unclean', 'a splitter that was not clean', {
    hygiene: { rod: 'r2', splitterClean: false },
  }),
  hygiene('hygiene-not-looked', 'a rod that no one looked at', {}),
  tray('tray-without-photo', 'a full tray', 20, {}),
  tray('tray-metres-differ', 'a tray of 21 m', 21, { photo: '1.jpg' }),
  mass('mass-in-grams', 'grams', '3200'),
  mass('mass-unreadable', 'a decimal comma', '3,2'),
];

/** Errors of bags, controls, the splitter and chip trays. */
export const SAMPLING_CASES: readonly ErrorCase[] = [...BAG_CASES, ...SCHEME_CASES, ...SPLITTER_CASES];
