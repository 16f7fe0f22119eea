import type { Finding } from '../../src/finding/finding.ts';
import type { LoadParent } from '../../src/schema/read/chain.ts';
import { checkLoggingFile } from '../../src/schema/read/check-file.ts';

/** A small schema as a file says it: one field of each kind that has something to go wrong. */
export const SMALL = {
  format: 1,
  name: 'small',
  fields: [
    { ...flags(), name: 'rock', label: 'rock', kind: 'code', list: 'rocks', second: true, required: true },
    { ...flags(), name: 'wear', label: 'weathering', kind: 'level', scale: 'wear', pair: 'we' },
    {
      ...flags(),
      name: 'sulphide',
      label: 'sulphides',
      kind: 'percents',
      list: 'sulphides',
      ladder: [1, 5, 10],
      sumLimitPercent: 100,
      canBeNone: true,
    },
    { ...flags(), name: 'habit', label: 'habit', kind: 'text', onlyWhen: { field: 'sulphide', seen: true } },
    {
      ...flags(),
      name: 'magsus',
      label: 'susceptibility',
      kind: 'number',
      unit: '1e-3 SI',
      min: 0,
      max: 100,
      decimals: 1,
      column: true,
      carry: false,
    },
  ],
  scales: {
    wear: {
      label: 'weathering',
      levels: [
        { level: 1, code: 'FRE', label: 'fresh', look: 'hard' },
        { level: 2, code: 'SOI', label: 'soil', look: 'soft' },
      ],
    },
  },
  lists: {
    rocks: {
      label: 'rocks',
      codes: [
        { code: 'BAS', label: 'basalt', look: 'dark', pair: 'ba' },
        { code: 'SHA', label: 'shale', look: 'flaky', pair: 'sh' },
      ],
    },
    sulphides: {
      label: 'sulphides',
      codes: [
        { code: 'PYR', label: 'pyrite', look: 'brassy', pair: 'py', key: 'p' },
        { code: 'ARS', label: 'arsenopyrite', look: 'silver', pair: 'ar' },
      ],
    },
  },
} as const;

function flags() {
  return { required: false, carry: true, unsaid: 'not observed', canBeNone: false } as const;
}

/** What reading and checking a file finds. */
export function findingsOf(file: unknown, loadParent?: LoadParent): readonly Finding[] {
  const text = typeof file === 'string' ? file : JSON.stringify(file, null, 2);
  return checkLoggingFile({ file: 'logging.json', text }, loadParent).findings;
}

/** The small schema with a file of changes over it. */
export function overSmall(changes: object): readonly Finding[] {
  return findingsOf({ format: 1, name: 'over', extends: './small.json', ...changes }, (reference) =>
    reference === './small.json' ? { file: 'small.json', text: JSON.stringify(SMALL, null, 2) } : undefined,
  );
}
