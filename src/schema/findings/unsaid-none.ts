import { defineFinding } from '../../finding/finding.ts';

/** Raised where leaving a field unsaid means none, and none can’t be said of it. */
export const unsaidNone = defineFinding({
  code: 'schema-unsaid-none',
  severity: 'fault',
  title: 'Unsaid means none for a field that always is something.',
  rationale: 'A rock is never none. The row would hold what nobody could see.',
});
