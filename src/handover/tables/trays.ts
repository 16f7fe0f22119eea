import { metres } from '../../quantity/depth.ts';
import { traysOf } from '../../standing/trays.ts';
import { depth, integer, optional, text, yesNo } from './column.ts';
import { HOLE } from './holes.ts';
import { defineTable, holesOf } from './table.ts';

/** Chip trays with their photographs. */
export const TRAYS = defineTable({
  name: 'trays',
  about: 'Chip trays down to the depth drilled, with the photographs registered to them.',
  key: ['hole', 'tray'],
  columns: {
    hole: HOLE,
    tray: integer('Number of the tray in its hole, from 1'),
    from_m: depth('Top of what is in it'),
    to_m: depth('Bottom of what is in it'),
    done: yesNo('No more chips come into it'),
    label: text('What its label says'),
    photo: optional(text('File name of its photograph'), 'no photograph is registered'),
  },
  rows: (source) =>
    holesOf(source).flatMap((hole) =>
      traysOf(source.project, hole).map(({ tray, fromMm, toMm, done, label, photo }) => ({
        hole: hole.id,
        tray,
        from_m: metres(fromMm),
        to_m: metres(toMm),
        done,
        label,
        photo,
      })),
    ),
});
