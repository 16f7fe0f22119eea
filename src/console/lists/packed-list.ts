import type { Packed } from '../../desk/packing/pack.ts';
import { sinceWords } from '../../desk/packing/since-words.ts';
import type { State } from '../state.ts';
import { type Line, line, wrap } from '../widgets/line.ts';
import { type Listed, type ListSection, oneSection } from './listed.ts';

const TITLE = 'packed for camp';

/** What came of packing: the two files, what to do with them, and what is not finished in what was packed. */
export function packedList({ packed }: State, width: number): Listed {
  if (packed === undefined) return oneSection(TITLE, [[line('Packing …')]]);
  if (!packed.ok)
    return oneSection(TITLE, [
      [...wrap(`Not packed: ${packed.problem}.`, width, 'alert'), ...wrap(packed.remedy, width, 'accent')],
    ]);
  return {
    title: TITLE,
    sections: [{ head: [], items: fileLines(packed, width) }, unfinishedSection(packed, width)],
  };
}

function fileLines(
  packed: Extract<Packed, { readonly ok: true }>,
  width: number,
): readonly (readonly Line[])[] {
  const { bundle, drafts, bytes, to, since } = packed;
  const kilobytes = Math.ceil(bytes / 1024);
  const address = to.length === 0 ? 'It has no address: give it one.' : `It goes to ${to.join(', ')}.`;
  return [
    ...(since === undefined ? [] : [wrap(sinceWords(since, packed.holes), width)]),
    [
      line(drafts.length === 1 ? 'Mail draft' : `${drafts.length} mail drafts: send all of them`, 'faint'),
      ...drafts.flatMap((draft) => wrap(`  ${draft}`, width, 'strong')),
    ],
    [
      line(`Bundle, ${kilobytes} kB, ${drafts.length === 1 ? 'attached to it' : 'a part in each'}`, 'faint'),
      ...wrap(`  ${bundle}`, width, 'strong'),
    ],
    wrap(
      `Nothing has been sent. Open ${drafts.length === 1 ? 'the draft' : 'each draft'} in the mail program and send it, or pass the bundle on with a USB stick. ${address}`,
      width,
      'accent',
    ),
  ];
}

function unfinishedSection(
  { unfinished }: Extract<Packed, { readonly ok: true }>,
  width: number,
): ListSection {
  if (unfinished.length === 0)
    return { head: [[], line('Nothing in it is left unfinished.', 'good')], items: [] };
  return {
    head: [[], line('Not finished', 'warn')],
    items: unfinished.flatMap(({ name, items }) =>
      items.map((item) => wrap(`${name}: ${item}`, width, 'plain')),
    ),
  };
}
