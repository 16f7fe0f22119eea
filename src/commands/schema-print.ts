import type { Outside } from '../desk/outside.ts';
import type { Result } from '../finding/finding.ts';
import { headerOf } from '../hole/hole.ts';
import { formatInterval } from '../quantity/interval.ts';
import type { Document } from '../record/document.ts';
import type { BagRunLine } from '../sampling/numbers/bag-run.ts';
import { cribLines } from '../schema/print/crib.ts';
import { rowJsonSchema } from '../schema/print/row-json-schema.ts';
import { bagSheetHtml, cribHtml, logSheetHtml } from '../schema/print/sheets.ts';
import { bagRunOf } from '../standing/bag-run.ts';
import { headsOf } from '../standing/heads.ts';
import { atProject, holeNamed, type Shared } from './at-project.ts';
import { EXIT, refuse, say, sayFile, sayJson } from './say.ts';

/** What `offsider schema keys` is given. */
export interface KeysAsked extends Shared {
  readonly width: number;
  /** A page to print, instead of text. */
  readonly html: boolean;
  /** Instead, a blank sheet of this hole to write on. */
  readonly logSheet?: string | undefined;
  readonly bagSheet?: string | undefined;
}

/** Rows on a blank sheet: what two pages hold. */
const SHEET_ROWS = 40;

/** Prints what can be typed: every pair and key of the project's schema on one page; or a blank sheet for the day the laptop dies. */
export function schemaKeys(outside: Outside, asked: KeysAsked): Promise<number> {
  return atProject(outside, asked, async (at) => {
    const { schema } = at.project;
    const named = asked.logSheet ?? asked.bagSheet;
    if (named === undefined) {
      if (asked.html) sayFile(outside, cribHtml(schema));
      else say(outside, cribLines(schema, asked.width).join('\n'));
      return EXIT.fine;
    }
    const hole: Result<Document> = holeNamed(at, named);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    const { name, intervalMm } = headerOf(hole.value);
    if (asked.logSheet === undefined) {
      const { lines } = bagRunOf(at.project, hole.value);
      sayFile(outside, bagSheetHtml({ hole: name, lines: bagLines(lines) }));
    } else {
      const fromMm = headsOf(hole.value).loggedMm;
      sayFile(outside, logSheetHtml(schema, { hole: name, fromMm, intervalMm, rows: SHEET_ROWS }));
    }
    return EXIT.fine;
  });
}

/** Numbered bags with what belongs in each; blank lines where none are numbered. */
function bagLines(lines: readonly BagRunLine[]) {
  if (lines.length === 0) return Array.from({ length: SHEET_ROWS }, () => ({ number: '', what: '' }));
  return lines.map(({ number, kind, fromMm, toMm, of }) => {
    const metre = fromMm === undefined || toMm === undefined ? '' : formatInterval({ fromMm, toMm });
    const what = kind === 'primary' ? metre : `${kind.toUpperCase()}${of === undefined ? '' : ` of ${of}`}`;
    return { number, what };
  });
}

/** Prints the JSON Schema (2020-12) of the rows that the project's schema logs. */
export function exportSchema(outside: Outside, asked: Shared): Promise<number> {
  return atProject(outside, asked, async ({ project }) => {
    sayJson(outside, rowJsonSchema(project.schema));
    return EXIT.fine;
  });
}
