import { asOf } from '../../record/chain.ts';
import type { Document } from '../../record/document.ts';

/**
 * A hole as it stood when the rig was at a depth: its history up to the first rod below that, so that whatever was amended later is left
 * out. `atMm` in millimetres; the hole as it is now where the rig has not gone past it.
 */
export function holeAsThen(hole: Document, atMm: number): Document {
  const cut = hole.history.findIndex(({ changes }) =>
    changes.some(
      (change) => 'put' in change && change.put[0] === 'rods' && Number(change.thing.depthMm) > atMm,
    ),
  );
  return cut < 0 ? hole : asOf(hole, cut);
}
