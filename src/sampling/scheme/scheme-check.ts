import type { Finding } from '../../finding/finding.ts';
import {
  numberBlock,
  numberPrefixes,
  rateShort,
  rateUnusual,
  reservedTwice,
  slotNever,
  slotUsual,
  withoutMaterial,
} from '../findings.ts';
import { formatBagNumber } from '../numbers/bag-number.ts';
import type { NumberBlock, Sampling, Slot } from '../sampling.ts';
import type { ControlKind } from '../settings.ts';
import { greatestDivisor, PUBLISHED_LOWEST, type Rates, ratesOf } from './rates.ts';

const SLOTS = { field: 'sampling.controls.slots' };

/** Everything that is wrong with a control scheme and its numbers before a bag is filled. */
export function checkScheme(sampling: Sampling): readonly Finding[] {
  return [
    ...checkPrefixes(sampling.numbers.prefixes),
    ...checkBlocks(sampling.blocks),
    ...checkSlots(sampling),
    ...checkMaterials(sampling),
    ...checkRates(sampling),
  ];
}

function checkPrefixes(prefixes: readonly string[]): readonly Finding[] {
  return prefixes.flatMap((prefix, index) =>
    prefixes
      .filter(
        (other, place) => place !== index && other.startsWith(prefix) && (other !== prefix || place > index),
      )
      .map((other) =>
        numberPrefixes.at(
          { field: 'sampling.numbers.prefixes' },
          {
            excerpt: `${prefix}, ${other}`,
            problem: `${prefix} is the beginning of ${other}.`,
            remedy: 'Take prefixes that part at a letter, such as ZQA and ZQB.',
          },
        ),
      ),
  );
}

function checkBlocks(blocks: readonly NumberBlock[]): readonly Finding[] {
  const place = { field: 'sampling.numbers.blocks' };
  const backwards = blocks
    .filter(({ first, last }) => first.prefix !== last.prefix || last.serial < first.serial)
    .map((block) =>
      numberBlock.at(place, {
        problem: `The block of ${block.rig} runs backwards or across prefixes.`,
        remedy: 'Give its first and its last number, of one prefix.',
      }),
    );
  const over = blocks.flatMap((block, index) =>
    blocks
      .slice(index + 1)
      .filter((other) => other.first.prefix === block.first.prefix)
      .filter((other) => other.first.serial <= block.last.serial && block.first.serial <= other.last.serial)
      .map((other) =>
        numberBlock.at(place, {
          problem: `The blocks of ${block.rig} and ${other.rig} share numbers.`,
          remedy: 'Part them, so that no number is in two blocks.',
        }),
      ),
  );
  return [...backwards, ...over];
}

function checkSlots(sampling: Sampling): readonly Finding[] {
  const { slots } = sampling;
  const never = slots
    .filter((slot) => slot.at >= slot.every)
    .map((slot) =>
      slotNever.at(SLOTS, {
        excerpt: `every ${slot.every}, at ${slot.at}`,
        problem: `No number leaves ${slot.at} when it is divided by ${slot.every}.`,
        remedy: `Write \`at\` from 0 to ${slot.every - 1}.`,
      }),
    );
  const usual = slots
    .filter((slot) => slot.oneOf.length > 0 && !slot.oneOf.includes(slot.kind))
    .map((slot) =>
      slotUsual.at(SLOTS, {
        excerpt: slot.kind,
        problem: `A slot is usually a ${slot.kind}, and that is none of its kinds.`,
        remedy: `Make it one of ${slot.oneOf.join(', ')}.`,
      }),
    );
  return [...never, ...usual, ...checkCollisions(sampling)];
}

/** Two slots meet where the difference of their places is a multiple of the greatest divisor of their rounds (Chinese remainders). */
function checkCollisions(sampling: Sampling): readonly Finding[] {
  const { slots } = sampling;
  return slots.flatMap((slot, index) =>
    slots
      .slice(index + 1)
      .filter((other) => (slot.at - other.at) % greatestDivisor(slot.every, other.every) === 0)
      .filter((other) => slot.at < slot.every && other.at < other.every)
      .map((other) => {
        const number = formatBagNumber(sampling.numbers, meeting(sampling, slot, other));
        return reservedTwice.at(SLOTS, {
          excerpt: number,
          problem: `${number} is reserved for a ${slot.kind} and for a ${other.kind}.`,
          remedy: 'Give the slots the same `every` and different `at`, or move one of them.',
        });
      }),
  );
}

/** The first number that two slots both reserve, counted from serial 0. */
function meeting(sampling: Sampling, slot: Slot, other: Slot) {
  let serial = slot.at;
  while (serial % other.every !== other.at) serial += slot.every;
  return { prefix: sampling.numbers.prefixes[0] ?? '', serial };
}

function checkMaterials(sampling: Sampling): readonly Finding[] {
  const needs = (kind: ControlKind): boolean =>
    sampling.slots.some((slot) => slot.kind === kind || slot.oneOf.includes(kind));
  const missing = [
    ...(needs('standard') && sampling.standards.every((each) => each.retired) ? ['standard'] : []),
    ...(needs('blank') && sampling.blanks.every((each) => each.retired) ? ['blank'] : []),
  ];
  return missing.map((kind) =>
    withoutMaterial.at(
      { field: `sampling.controls.${kind}s` },
      {
        problem: `The scheme reserves numbers for a ${kind}, and no ${kind} is listed.`,
        remedy: `List the ${kind}s that are on site with how many there are.`,
      },
    ),
  );
}

function checkRates(sampling: Sampling): readonly Finding[] {
  const achieved = ratesOf(sampling);
  const { standardPercent, blankPercent, duplicatePercent } = sampling.wanted;
  const wanted = { standard: standardPercent, blank: blankPercent, 'field duplicate': duplicatePercent };
  const short = (Object.keys(wanted) as ControlKind[]).flatMap((kind) => {
    const percent = wanted[kind];
    if (percent === undefined || achieved[kind] >= percent) return [];
    const said = {
      problem: `${percent} ${kind}s in 100 samples are wanted, and the slots give ${achieved[kind].toFixed(1)}.`,
      remedy: 'Give them more places in the scheme, or lower the target.',
    };
    return [rateShort.at(SLOTS, said)];
  });
  return [...short, ...checkPublished(achieved)];
}

/** Rates below the lowest that is published: duplicates by themselves, standards together with blanks. */
function checkPublished(achieved: Rates): readonly Finding[] {
  const together = [
    {
      what: 'field duplicates',
      percent: achieved['field duplicate'],
      lowest: PUBLISHED_LOWEST['field duplicate'],
    },
    {
      what: 'standards and blanks',
      percent: achieved.standard + achieved.blank,
      lowest: PUBLISHED_LOWEST['standard and blank'],
    },
  ];
  return together
    .filter(({ percent, lowest }) => percent < lowest)
    .map(({ what, percent, lowest }) =>
      rateUnusual.at(SLOTS, {
        problem: `The slots give ${percent.toFixed(1)} ${what} in 100 samples; published practice is ${lowest} or more (Abzalov 2008).`,
        remedy: 'Keep it if the project has settled on it.',
      }),
    );
}
