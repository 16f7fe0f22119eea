import type { LoggingSchema } from '../../src/schema/logging-schema.ts';
import { parseLine } from '../../src/shorthand/parse.ts';
import type { RowSaid } from '../../src/value/row.ts';

/**
 * An invented hole in the orogenic gold style, 78 m as a geologist would log it: sand and laterite, saprolite, saprock, basalt, a
 * sheared and veined zone with arsenopyrite, a felsic porphyry, shale. Typed with pairs so that a style can move its keys.
 */
const LINES = `
sawx6ox3olyeez5 fabric'nr
lrrdez6
.
cdmzowez1
lsik
.
we
.
.
li
.
.
yewx5
.
paeg
.
.
ocwx4
.
bawx3dyez3
ox2
.
wx2mecl1
ox1dn
py,
cl2
.
vn.5qc
vn0py0
fi
.
cl1lt1
py,
vn1qc
vn.5
.
cl2lt0
se1
py.5de
sdctvn2
se2ak1
qi1py1
py2vn5
ar.5qzns
ar1vn10
qi2se3
py3ar2
vn20
.
ar1qi1
vn10py2
ar.5
vn5se2
ar,qi0
py1
ar0vn2
fi
se1cl1
fpmectliak0
.
py.5
.
vn1
vn0
bactdncl2se0
fi
mecl1
py,
.
hl,
hl0
vn1
lt1vn.5
.
shctblbeez2
py1
py2fs
po.5
.
py1
po0
.
`
  .trim()
  .split('\n');

/** The rows of the sample hole. Throws where a line of it is not a row: the sample or the style is wrong then. */
export function sampleLog(schema: LoggingSchema): readonly RowSaid[] {
  const rows: RowSaid[] = [];
  for (const line of LINES) {
    const above = rows.findLast((row) => !row.noReturn);
    const read = parseLine(line, { schema, above, previous: rows.at(-1) });
    if (read.kind !== 'row')
      throw new Error(`${line}: ${read.kind === 'refused' ? read.problem : read.kind}`);
    const { asked: _, ...row } = read.row;
    rows.push(row);
  }
  return rows;
}
