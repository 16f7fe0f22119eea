import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { enter } from '../../src/commands/enter.ts';
import { newProject } from '../../src/commands/new-project.ts';
import { depthFromMetres } from '../../src/quantity/depth.ts';
import type { Interval } from '../../src/quantity/interval.ts';
import { fieldApplies } from '../../src/schema/applies.ts';
import { breaksCarry } from '../../src/schema/cautions.ts';
import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { STYLES } from '../../src/schema/styles/index.ts';
import { explain } from '../../src/shorthand/explain.ts';
import { writeLine } from '../../src/shorthand/write.ts';
import { adviceOf } from '../../src/termination/advice/verdict.ts';
import { evaluateRules } from '../../src/termination/evaluate/evaluate-rule.ts';
import { starterRules } from '../../src/termination/rules/starter-rules.ts';
import { type Cell, NONE, NOT_OBSERVED } from '../../src/value/cell.ts';
import type { Cells, Row, RowSaid } from '../../src/value/row.ts';
import { resolveStyle } from '../support/styles.ts';
import { situation } from '../termination/build.ts';
import { freshFolder, hear } from './support/outside.ts';
import { readNarrative, readWords } from './support/prose.ts';

const PROGRAM =
  'hole,easting,northing,elevation,azimuth,north,dip,depth\nTOLD1,412400,6778160,410,270,grid,-60,160\n';
const file = (style: string, kind: string): string =>
  join(import.meta.dirname, 'narratives', `${style}.${kind}`);
const textOf = (style: string, kind: string): string => readFileSync(file(style, kind), 'utf8');
/** The first style is told by the whole hole of tests/e2e. */
const TOLD = Object.keys(STYLES).filter((style) => existsSync(file(style, 'txt')));

/**
 * The first metre at which each told hole may end, by hand, each at the end of a rod. Porphyry: never, copper comes back in the skarn. Laterite: six
 * metres of bedrock from 50 m. Iron: twelve unmineralised metres from 40 m, but fibre asks from 52 m until six metres below the last of it.
 * Pegmatite: twenty metres of wall rock from 62 m. Epithermal: twenty metres under 1 % of veins from 78 m. Iron oxide copper–gold: 24 metres
 * without copper from 68 m. Komatiite: eighteen metres of basalt from 80 m, below a porphyry that is no footwall. Massive sulphide: twenty
 * metres under 2 % from 74 m. Zinc–lead: twenty metres from 70 m, the gas far above. Carbonatite: 24 metres of wall rock from 76 m,
 * below a dyke. Clay: six metres of saprock from 48 m; two at 36 m are a corestone.
 */
const MAY_END: Readonly<Record<string, number>> = {
  'porphyry-copper-gold': 0,
  'lateritic-nickel': 60,
  'iron-formation': 66,
  'lithium-pegmatite': 84,
  'epithermal-gold-silver': 102,
  'iron-oxide-copper-gold': 96,
  'komatiite-nickel-sulphide': 102,
  'volcanic-massive-sulphide': 96,
  'sediment-hosted-zinc-lead': 90,
  'carbonatite-rare-earths': 102,
  'clay-rare-earths': 54,
};

/** A row of which only what was said is held. */
function observed(cells: Cells): Cells {
  return Object.fromEntries(
    Object.entries(cells).filter(([, cell]) => !('absent' in cell && cell.absent === 'not observed')),
  );
}

/** Without what every row says of things that are never carried: that none was there. */
function told(schema: LoggingSchema, cells: Cells): Cells {
  const lies = (name: string): boolean =>
    schema.fields.some((field) => field.name === name && !field.carry && field.unsaid === 'none');
  return Object.fromEntries(
    Object.entries(observed(cells)).filter(([name, cell]) => !('absent' in cell && lies(name))),
  );
}

type Narrative = ReturnType<typeof readNarrative>;
/** What one metre should hold of what was told. */
type Metre = { readonly fromMm: number; readonly cells: Cells };

/** Every metre of a narrative: what stays, what lies at a place in it, and in the first of some metres what lies nowhere else. */
function metresOf(schema: LoggingSchema, narrative: Narrative): readonly Metre[] {
  return narrative.flatMap(({ fromM, toM, cells }) =>
    Array.from({ length: toM - fromM }, (_, index): Metre => {
      const fromMm = (fromM + index) * 1000;
      const here = (name: string, cell: Cell): readonly (readonly [string, Cell])[] => {
        if (schema.fields.find((field) => field.name === name)?.carry) return [[name, cell]];
        if (!('events' in cell)) return index === 0 ? [[name, cell]] : [];
        const events = Object.entries(cell.events).filter(
          ([, { atMm = fromM * 1000 }]) => atMm >= fromMm && atMm < fromMm + 1000,
        );
        return events.length === 0 ? [] : [[name, { events: Object.fromEntries(events) }]];
      };
      return {
        fromMm,
        cells: Object.fromEntries(Object.entries(cells).flatMap(([name, cell]) => here(name, cell))),
      };
    }),
  );
}

/** The lines that a hole told in prose is typed as, a metre each. */
function linesOf(schema: LoggingSchema, metres: readonly Metre[]): readonly string[] {
  let above: RowSaid | undefined;
  let previous: RowSaid | undefined;
  let repeats = 0;
  return metres.map(({ fromMm, cells: said }) => {
    const cells: { [field: string]: Cell } = {};
    const isUnseen = breaksCarry(schema, { cells: said });
    for (const field of schema.fields)
      if (fieldApplies(schema, cells, field))
        cells[field.name] = said[field.name] ?? (isUnseen || field.unsaid !== 'none' ? NOT_OBSERVED : NONE);
    const interval = { fromMm, toMm: fromMm + 1000 } as Interval;
    const line = writeLine({ cells }, { schema, above, previous, repeats, interval });
    repeats = JSON.stringify(previous?.cells) === JSON.stringify(cells) ? repeats + 1 : 1;
    previous = { cells };
    above = isUnseen ? undefined : previous;
    return line;
  });
}

describe.each(TOLD)('a hole told in prose and logged in the style %s', (style) => {
  const schema = resolveStyle(style)!;
  const narrative = readNarrative(schema, textOf(style, 'txt'));
  const metres = metresOf(schema, narrative);
  if (process.env.OFFSIDER_WRITE_EXPECTED === 'narratives')
    writeFileSync(file(style, 'lines'), `${linesOf(schema, metres).join('\n')}\n`);
  const lines = textOf(style, 'lines').trimEnd().split('\n');
  const unsayable = textOf(style, 'unsayable')
    .split('\n')
    .filter((line) => line.includes(' | '))
    .map((line) => line.split(' | ')[0]);
  const statements = narrative.flatMap((each) => each.statements);
  let rows: readonly Row[] = [];

  beforeAll(async () => {
    const folder = join(freshFolder(), 'told');
    const program = join(freshFolder(), 'program.csv');
    writeFileSync(program, PROGRAM);
    const made = hear();
    expect([
      await newProject(made.outside, { folder, style, program, epsg: 7851, keepGoing: false }),
      made.err(),
    ]).toEqual([0, '']);
    const heard = hear(lines.join('\n'));
    const code = await enter(heard.outside, { folder, hole: 'TOLD1', rig: 'RIG1', keepGoing: false });
    expect([code, heard.err()]).toEqual([0, '']);
    const { tables } = JSON.parse(readFileSync(join(folder, 'holes/TOLD1.json'), 'utf8'));
    rows = (Object.values(tables.rows) as Row[]).sort((a, b) => a.fromMm - b.fromMm);
  });

  it('is 100 m or more, without a gap, and every metre is logged by a line of its own', () => {
    expect(narrative.every((each, index) => each.fromM === (narrative[index - 1]?.toM ?? 0))).toBe(true);
    expect(narrative.at(-1)?.toM).toBeGreaterThanOrEqual(100);
    expect(rows.map(({ fromMm }) => fromMm / 1000)).toEqual(rows.map((_, index) => index));
    expect(rows).toHaveLength(narrative.at(-1)?.toM ?? 0);
    expect(lines).toHaveLength(rows.length);
  });

  it('says all that was told, save what is listed as not to be said: at most 3 % of the statements', () => {
    expect(narrative.flatMap((each) => each.notPlaced)).toEqual(unsayable);
    expect(unsayable.length / statements.length).toBeLessThanOrEqual(0.03);
    for (const [index, { cells }] of metres.entries())
      expect(told(schema, rows[index]?.cells ?? {}), `${index} m`).toEqual(expect.objectContaining(cells));
  });

  it('says nothing that was not told', () => {
    for (const [index, { cells }] of metres.entries())
      expect(Object.keys(told(schema, rows[index]?.cells ?? {})).sort(), `${index} m`).toEqual(
        Object.keys(cells).sort(),
      );
  });

  it('may end, by the starter rules of its style, first where a geologist would let it', () => {
    const stream = [{ fromMm: depthFromMetres(0), toMm: depthFromMetres(300), moisture: 'dry' as const }];
    const first = rows.findIndex((_, index) => {
      const plan = { depthMm: depthFromMetres(index + 1 + 24) };
      const at = situation(rows.slice(0, index + 1), { schema, plan, stream });
      return ['may end', 'end'].includes(adviceOf(evaluateRules(starterRules(style), at), at).verdict);
    });
    expect(first + 1).toBe(MAY_END[style]);
  });

  it('reads back into words without one that is false', () => {
    for (const row of rows) {
      const pieces = explain(row, { schema }).filter(({ kind }) => kind !== 'caution' && kind !== 'note');
      const words = pieces.map(({ text }) => text).filter((text) => !text.endsWith(' not observed'));
      const read = readWords(schema, words);
      expect([row.fromMm / 1000, read.notPlaced]).toEqual([row.fromMm / 1000, []]);
      expect(told(schema, read.cells), `${row.fromMm / 1000} m: ${words.join('. ')}`).toEqual(
        told(schema, row.cells),
      );
    }
  });
});
