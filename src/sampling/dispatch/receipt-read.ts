import { ok, type Result, refused } from '../../finding/finding.ts';
import { receiptUnreadable } from '../findings.ts';
import { type NumberForm, parseBagNumber } from '../numbers/bag-number.ts';

/**
 * Numbers on a laboratory's receipt, in its order: the column with the most numbers of this project's form, from the first of them
 * down. What stands among them and is none of ours is kept: a strange bag is worth knowing of. Refused where no column has any.
 */
export function readReceipt(
  form: NumberForm,
  records: readonly (readonly string[])[],
  file: string,
): Result<readonly string[]> {
  const isOurs = (cell: string | undefined): boolean =>
    parseBagNumber(form, (cell ?? '').trim()) !== undefined;
  const columns = Math.max(0, ...records.map((record) => record.length));
  const counts = Array.from(
    { length: columns },
    (_, column) => records.filter((each) => isOurs(each[column])).length,
  );
  const most = Math.max(0, ...counts);
  if (most === 0)
    return refused(
      receiptUnreadable.at(
        { file },
        {
          ...(records[0] === undefined ? {} : { excerpt: records[0].join(',') }),
          problem: 'No column of it holds bag numbers of this project.',
          remedy: 'Give the CSV that lists the samples received. Nothing was changed.',
        },
      ),
    );
  const column = counts.indexOf(most);
  const from = records.findIndex((record) => isOurs(record[column]));
  return ok(
    records
      .slice(from)
      .map((record) => (record[column] ?? '').trim())
      .filter((cell) => cell !== ''),
  );
}
