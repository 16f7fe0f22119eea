import type { Field, LoggingSchema } from '../../src/schema/logging-schema.ts';
import { schema } from './fixture-schema.ts';

const look = 'as the driller says';

/** What the lost circulation of {@link withEvents} warns of. */
export const LOST = { kind: 'other', words: 'Broken ground may be near: go by site procedures.' } as const;

const EVENTS: Field = {
  name: 'events',
  label: 'events',
  kind: 'events',
  list: 'events',
  required: false,
  carry: false,
  unsaid: 'none',
  canBeNone: true,
};

/** The fixture with events at a point. Invented for the tests. */
export const withEvents: LoggingSchema = {
  ...schema,
  fields: [...schema.fields, EVENTS],
  lists: {
    ...schema.lists,
    events: {
      name: 'events',
      label: 'events',
      codes: [
        {
          code: 'WST',
          label: 'water strike',
          look,
          pair: 'wk',
          measure: { unit: 'L/s', min: 0, max: 60, decimals: 1 },
        },
        { code: 'TFR', label: 'top of fresh rock', look, pair: 'ty' },
        { code: 'FLT', label: 'fault', look, pair: 'fk' },
        { code: 'LCI', label: 'lost circulation', look, pair: 'lk', noChips: true, caution: LOST },
      ],
    },
  },
};
