import type { Change } from '../../../src/record/document.ts';
import { HOLE, holeMade, rowLogged } from '../../desk/support/values.ts';

function thingOf(change: Change | undefined): unknown {
  return change !== undefined && 'put' in change ? change.thing : undefined;
}

/** The file of a hole of two rows, written by hand: small enough to be spoiled at every place. */
export const SMALL_HOLE = JSON.stringify(
  {
    $schema: '../schemas/hole.schema.json',
    format: 1,
    kind: HOLE.kind,
    id: HOLE.id,
    journal: { generation: 1, sequence: 2 },
    tables: {
      hole: { hole: thingOf(holeMade()[0]) },
      rows: Object.fromEntries(
        [0, 1].map((metre) => [`k2-${metre}`, thingOf(rowLogged(`k2-${metre}`, metre))]),
      ),
    },
    history: [],
  },
  null,
  2,
);
