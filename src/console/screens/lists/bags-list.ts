import { headerOf, holeNouns } from '../../../hole/hole.ts';
import type { Document } from '../../../record/document.ts';
import { streamAhead } from '../../../sampling/stream.ts';
import { compartmentAt } from '../../../sampling/trays.ts';
import { streamStateOf } from '../../../standing/stream.ts';
import { upcomingLine } from '../../panels/bags-panel.ts';
import type { State } from '../../state.ts';
import { type Line, line, spans } from '../../widgets/line.ts';
import { type Listed, oneSection } from './listed.ts';

/** Bags that come, with the place of their chips in the trays, ready to tick off; what is put off stands first. */
export function bagsList(state: State, hole: Document): Listed {
  const { sampling } = state.project;
  const ahead = streamAhead(sampling, streamStateOf(hole), { count: 400, rodMm: headerOf(hole).rodMm });
  const issued = holeNouns(hole, 'bags');
  const lines = ahead.upcoming.map((bag): Line => {
    const tray =
      bag.fromMm === undefined ? undefined : compartmentAt(sampling, headerOf(hole).logFromMm, bag.fromMm);
    const place = tray === undefined ? '' : `   tray ${tray.tray}, ${tray.compartment}`;
    return [...spans('[ ] '), ...upcomingLine(bag), ...spans([place, 'faint'])];
  });
  const putOff = ahead.putOff.map((put) =>
    line(`put off: ${put.kind} ${put.number} (${put.reason}); ;place puts it in`, 'warn'),
  );
  const none = line('No numbered bags: ;numbered and the first and last number.', 'warn');
  const last = issued.at(-1)?.number;
  return oneSection(
    `bags · ${issued.length} issued${last === undefined ? '' : `, last ${last}`} · ${ahead.numberedLeft} numbered left`,
    [...putOff, ...(lines.length === 0 ? [none] : lines)].map((each) => [each]),
  );
}
