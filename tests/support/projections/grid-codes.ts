import { EPSG_TABLE } from '../../../src/survey/norths/epsg-table.ts';

/** The codes of every system in the table, in its order. */
export function gridCodes(): readonly number[] {
  return EPSG_TABLE.split('\n').flatMap((line) => {
    const [first = 0, count = 1] = (line.split('|')[0] ?? '').split('x').map(Number);
    return Array.from({ length: count }, (_, index) => first + index);
  });
}
