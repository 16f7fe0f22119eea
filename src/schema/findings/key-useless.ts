import { defineFinding } from '../../finding/finding.ts';

/** Raised where a single key names something that takes no amount. */
export const keyUseless = defineFinding({
  code: 'schema-key-useless',
  severity: 'warning',
  title: 'A single key can never be used.',
  rationale:
    'A single key always has an amount behind it. Where no amount belongs, the pair types it; the key is lost to something that needs it.',
});
