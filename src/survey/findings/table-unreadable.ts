import { defineFinding } from '../../finding/finding.ts';

/** Raised where shots or collars are read from a table. */
export const tableUnreadable = defineFinding({
  code: 'survey-table-unreadable',
  severity: 'fault',
  title: 'A table of shots or collars holds something that can not be read.',
  rationale:
    'A column under another name, or a cell that is no number, would be left out or read as zero by a lazier reader, and a shot at zero ' +
    'degrees looks like any other.',
});
