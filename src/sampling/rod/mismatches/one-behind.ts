import { formatInterval } from '../../../quantity/interval.ts';
import { layWith, type MismatchKind, withAndWithoutTail } from '../mismatch.ts';
import { holding, primariesBefore, withDuplicates } from './shift.ts';

/** The stream was a number behind before this rod began: a metre of the rod before has no bag and no one saw it. */
export const oneBehind: MismatchKind = {
  code: 'one-behind',
  name: 'the stream is one behind',
  happened:
    'The bags were a number behind before this rod: a metre above has no bag, and it was not read there.',
  claims: ['the row began a number behind'],
  ground:
    'Find the pile without a calico above. Spear it into a new bag (;bag 46-47 and its number), or leave the metre without a sample.',
  nearSplitter: false,
  asks: 'Which pile of the rods above has no calico beside it?',
  suppose: (situation) => {
    const { samples, state } = situation;
    const before = primariesBefore(situation);
    const last = before.at(-1);
    const first = samples[0];
    if (last === undefined || first === undefined) return [];
    const late = holding(last, first);
    const laid = layWith(
      situation,
      { bags: state.bags.map((bag) => (bag === last ? late : bag)) },
      samples.slice(1),
    );
    const place = state.bags.indexOf(last);
    const behind = state.bags.slice(place + 1).filter((bag) => bag.kind !== 'spoiled');
    const upTo = withAndWithoutTail(state.bags.slice(0, place));
    const lying = upTo.map(({ length }) => [...state.bags.slice(length, place), late, ...behind, ...laid]);
    return before.flatMap((bare, index) => {
      const moved = before.slice(index).map((bag, step) => holding(bag, before[index + step + 1] ?? first));
      const { fromMm, toMm } = bare;
      if (fromMm === undefined || toMm === undefined) return [];
      return lying.map((bags) => ({
        at: formatInterval({ fromMm, toMm }),
        place: { fromMm, toMm },
        lying: bags,
        fix: {
          issue: laid,
          amend: withDuplicates(situation, moved),
          unsampled: [{ fromMm, toMm, reason: 'no bag was filled' }],
        },
        weight: 0.1,
      }));
    });
  },
};
