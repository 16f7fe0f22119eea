import type { Finding } from '../../finding/finding.ts';
import type { Document } from '../../record/document.ts';
import { REFUSALS } from '../findings.ts';
import { headerOf } from '../hole.ts';

/** Why nothing may be added to a hole as it is, or undefined where it may: a complete hole is closed until it is reopened. */
export function closedRefusal(hole: Document): Finding | undefined {
  const header = headerOf(hole);
  if (header.state !== 'complete') return undefined;
  return REFUSALS.closed.at(
    { hole: header.name },
    { problem: 'the hole is closed', remedy: 'Reopen it first, with the reason; reopening is recorded.' },
  );
}
