import type { Condition } from '../condition/condition.ts';
import { type Finding, ok, type Result } from '../finding/finding.ts';
import { numberNotOurs } from './findings.ts';
import { type BagNumber, type NumberForm, parseBagNumber } from './numbers/bag-number.ts';
import type { ControlKind, SamplingSettings } from './settings.ts';

/** Numbers reserved for a control: every serial that leaves `at` when divided by `every`. */
export interface Slot {
  readonly every: number;
  readonly at: number;
  /** The kind, or the usual one where it is chosen late. */
  readonly kind: ControlKind;
  /** Kinds that can be chosen while drilling; none where the kind is fixed. */
  readonly oneOf: readonly ControlKind[];
}

/** Numbers that belong to one rig, both ends in it. */
export interface NumberBlock {
  readonly rig: string;
  readonly first: BagNumber;
  readonly last: BagNumber;
}

/** The sampling settings as the program uses them: whole millimetres and grams, nothing left to parse. */
export interface Sampling {
  readonly numbers: NumberForm;
  readonly blocks: readonly NumberBlock[];
  /** Labels left over when a hole is over go on into the next hole of the rig. */
  readonly carriesLeftOver: boolean;
  readonly rank: 'metre' | 'composite';
  readonly lengthMm: number;
  readonly slots: readonly Slot[];
  readonly standards: SamplingSettings['controls']['standards'];
  readonly blanks: SamplingSettings['controls']['blanks'];
  readonly duplicates: 'second chute' | 'spear';
  readonly rotationSeed: string;
  readonly onDemand: readonly {
    readonly when: Condition;
    readonly kind: ControlKind;
    readonly why: string;
  }[];
  readonly wanted: SamplingSettings['controls']['wanted'];
  readonly splitTargetG: number;
  readonly splitTolerancePercent: number;
  readonly recovery: SamplingSettings['recovery'];
  /** Hygiene is looked at once in so many rods; undefined where the project does not ask for a record. */
  readonly hygieneEveryRods: number | undefined;
  readonly tray: { readonly compartments: number; readonly compartmentMm: number };
  readonly sackBags: number;
  readonly laboratory: SamplingSettings['laboratory'];
  readonly results: SamplingSettings['results'];
  readonly resplit: SamplingSettings['resplit'];
  /** Bags in a row on the ground; undefined where no one says. */
  readonly perRow: number | undefined;
}

/** The settings resolved into millimetres and grams; refused where a block's numbers are not of the project's form. */
export function resolveSampling(settings: SamplingSettings): Result<Sampling> {
  const form = numberForm(settings);
  const blocks = blocksOf(settings, form);
  if (!blocks.ok) return blocks;
  const { controls, split, trays } = settings;
  return ok({
    numbers: form,
    blocks: blocks.value,
    carriesLeftOver: settings.numbers.leftOver !== 'stay with their hole',
    rank: settings.sampled.rank,
    lengthMm: Math.round(settings.sampled.lengthM * 1000),
    slots: controls.slots.map((slot) => ({
      every: slot.every,
      at: slot.at,
      kind: 'kind' in slot ? slot.kind : slot.usually,
      oneOf: 'kind' in slot ? [] : slot.oneOf,
    })),
    standards: controls.standards,
    blanks: controls.blanks,
    duplicates: controls.duplicates,
    rotationSeed: controls.rotationSeed,
    onDemand: controls.onDemand,
    wanted: controls.wanted,
    splitTargetG: Math.round(split.targetKg * 1000),
    splitTolerancePercent: split.tolerancePercent,
    recovery: settings.recovery,
    hygieneEveryRods: settings.hygiene?.everyRods,
    tray: {
      compartments: trays.compartments,
      compartmentMm: Math.round(trays.metresPerCompartment * 1000),
    },
    sackBags: settings.sackBags,
    laboratory: settings.laboratory,
    results: settings.results,
    resplit: settings.resplit,
    perRow: settings.bagsPerRow ?? settings.resplit?.pilesPerRow,
  });
}

function blocksOf(settings: SamplingSettings, form: NumberForm): Result<readonly NumberBlock[]> {
  const findings: Finding[] = [];
  const blocks: NumberBlock[] = [];
  for (const block of settings.numbers.blocks) {
    const first = parseBagNumber(form, block.first);
    const last = parseBagNumber(form, block.last);
    if (first === undefined) findings.push(notOurs(block.first, form));
    if (last === undefined) findings.push(notOurs(block.last, form));
    if (first !== undefined && last !== undefined) blocks.push({ rig: block.rig, first, last });
  }
  return findings.length > 0 ? { ok: false, findings } : ok(blocks);
}

function numberForm(settings: SamplingSettings): NumberForm {
  const { prefixes, digits, checkDigit } = settings.numbers;
  return { prefixes, digits, ...(checkDigit === undefined ? {} : { checkDigit }) };
}

function notOurs(text: string, form: NumberForm): Finding {
  return numberNotOurs.at(
    { field: 'sampling.numbers.blocks' },
    {
      excerpt: text,
      problem: `${text} is not a bag number of this project.`,
      remedy: `Write ${form.prefixes.join(' or ')} and ${form.digits} digits${form.checkDigit === undefined ? '' : ' and the check digit'}.`,
    },
  );
}
