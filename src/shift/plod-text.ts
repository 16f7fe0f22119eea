import { formatInterval } from '../quantity/interval.ts';
import { formatMinutes, localTime } from '../quantity/stamp.ts';
import type { NewPlodLine } from './plod-line.ts';

/** A line of a plod as it was read. */
export function lineText({
  startsAt,
  endsAt,
  minutes,
  activity,
  hole,
  fromMm,
  toMm,
  wetFromMm,
  wetToMm,
  shots,
  beside,
  used,
  remark,
}: NewPlodLine): string {
  const times =
    startsAt === undefined || endsAt === undefined ? '' : `${localTime(startsAt)}–${localTime(endsAt)}  `;
  const metres =
    fromMm === undefined || toMm === undefined ? undefined : `${formatInterval({ fromMm, toMm })} m`;
  const more = [
    hole,
    metres,
    wetFromMm === undefined || wetToMm === undefined
      ? undefined
      : `wet ${formatInterval({ fromMm: wetFromMm, toMm: wetToMm })} m`,
    shots === undefined ? undefined : `${shots} ${shots === 1 ? 'shot' : 'shots'}`,
    ...(beside ?? []).map((each) => `+${each}`),
    ...(used ?? []).map((each) => `${each.count} ${each.item}`),
    remark,
  ].filter((each) => each !== undefined);
  return `${times}${formatMinutes(minutes)}  ${activity}${more.length === 0 ? '' : `  ${more.join(' · ')}`}`;
}
