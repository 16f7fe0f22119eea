import { holeNouns } from '../hole/hole.ts';
import { depthFromMm, formatDepth } from '../quantity/depth.ts';
import { formatInterval, type Interval, overlaps } from '../quantity/interval.ts';
import { instantMs, localTime } from '../quantity/stamp.ts';
import type { Document } from '../record/document.ts';
import { wetOf } from './hole-facts.ts';
import { type PlodLine, shiftHeaderOf, shiftThings } from './shift.ts';
import type { ShiftRecord } from './shift-record.ts';

/** Where on the sheet the metres, wet metres or shots of a hole come from that the record hasn't got, in words; empty where no line stands out. */
export function pointAt(
  subject: 'metres' | 'wet' | 'shots',
  hole: string,
  shift: Document,
  own: ShiftRecord,
  holes: readonly Document[] = [],
): string {
  const lines = shiftThings(shift, 'plodLines').map(([, line], index) => ({ line, number: index + 1 }));
  const here = lines.filter(({ line }) => line.hole === hole);
  if (subject === 'shots')
    return here
      .filter(({ line }) => (line.shots ?? 0) > 0)
      .map(({ line, number }) => `${claims(line, number)} ${line.shots}`)
      .concat(rejectedWords(hole, shift, holes))
      .join(', ');
  if (subject === 'wet')
    return here
      .flatMap(({ line, number }) => {
        const { wetFromMm: fromMm, wetToMm: toMm } = line;
        return fromMm === undefined || toMm === undefined
          ? []
          : [`${claims(line, number)} ${formatInterval({ fromMm, toMm })} wet`];
      })
      .concat(samplesWords(hole, own, holes))
      .join(', ');
  const drilled = own.metres.filter((each) => each.hole === hole);
  const before: (Interval & { readonly words: string })[] = [];
  return here
    .flatMap(({ line, number }) => {
      const { fromMm, toMm } = line;
      if (fromMm === undefined || toMm === undefined) return [];
      const claimed = { fromMm, toMm };
      const words = lineWords(line, number);
      const twice = before.find((each) => overlaps(each, claimed));
      before.push({ ...claimed, words });
      if (twice !== undefined)
        return [`${formatInterval(shared(twice, claimed))} is on ${twice.words} and on ${words}`];
      return without(claimed, drilled).map(
        (each) => `${claims(line, number)} ${formatInterval(each)}, where no rod was done`,
      );
    })
    .join(', ');
}

/** Which samples of the metres that our own record has came up wet. */
function samplesWords(id: string, own: ShiftRecord, holes: readonly Document[]): readonly string[] {
  const hole = holes.find((each) => each.id === id);
  const drilled = own.metres.filter((each) => each.hole === id);
  const wet = (hole === undefined ? [] : wetOf(hole)).filter((each) =>
    drilled.some((metres) => overlaps(metres, each)),
  );
  return wet.length === 0
    ? ['no sample of it is logged wet']
    : [`samples logged wet are ${wet.map(formatInterval).join(', ')}`];
}

/** Shots of the record that were rejected: the tool was run, so they count; one that was only misread is corrected, and does not. */
function rejectedWords(id: string, shift: Document, holes: readonly Document[]): readonly string[] {
  const hole = holes.find((each) => each.id === id);
  const { startsAt, endedAt } = shiftHeaderOf(shift);
  return (hole === undefined ? [] : holeNouns(hole, 'shots'))
    .filter(
      ({ at, rejected }) =>
        rejected !== undefined &&
        instantMs(at) >= instantMs(startsAt) &&
        (endedAt === undefined || instantMs(at) < instantMs(endedAt)),
    )
    .map(
      ({ depthMm, rejected }) =>
        `the record counts the one rejected at ${formatDepth(depthMm)} m (${rejected}): if it was only misread, c on F6 corrects it`,
    );
}

const shared = (a: Interval, b: Interval): Interval => ({
  fromMm: depthFromMm(Math.max(a.fromMm, b.fromMm)),
  toMm: depthFromMm(Math.min(a.toMm, b.toMm)),
});

const claims = (line: PlodLine, number: number): string =>
  `${lineWords(line, number)}${line.startsAt === undefined ? '' : ','} claims`;

function lineWords({ startsAt, endsAt }: PlodLine, number: number): string {
  return startsAt === undefined || endsAt === undefined
    ? `line ${number}`
    : `line ${number}, ${localTime(startsAt)}–${localTime(endsAt)}`;
}

/** Parts of an interval that no other covers. */
export function without(whole: Interval, others: readonly Interval[]): readonly Interval[] {
  return others.reduce<readonly Interval[]>(
    (left, other) =>
      left.flatMap((each) =>
        overlaps(each, other)
          ? [
              { fromMm: each.fromMm, toMm: depthFromMm(Math.max(each.fromMm, other.fromMm)) },
              { fromMm: depthFromMm(Math.min(each.toMm, other.toMm)), toMm: each.toMm },
            ].filter(({ fromMm, toMm }) => toMm > fromMm)
          : [each],
      ),
    [whole],
  );
}
