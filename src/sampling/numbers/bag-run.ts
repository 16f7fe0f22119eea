import { csvText, htmlText } from '../../finding/sheet-text.ts';
import { WHAT_IT_IS_NOT_HTML } from '../../finding/what-it-is-not.ts';
import { formatDepth } from '../../quantity/depth.ts';
import { NEAR_SPLITTER } from '../rod/mismatch.ts';
import type { Sampling } from '../sampling.ts';
import type { ControlKind } from '../settings.ts';
import { type StreamState, stream } from '../stream/stream.ts';
import { compartmentAt } from '../trays/trays.ts';

/** One line of the bag run: a number to label for tomorrow, its metre and kind, and where its chips go. */
export interface BagRunLine {
  readonly number: string;
  readonly hole: string;
  readonly kind: 'primary' | ControlKind;
  readonly fromMm?: number;
  readonly toMm?: number;
  readonly tray?: number;
  readonly compartment?: number;
  /** The primary that a duplicate repeats. */
  readonly of?: string;
  /** Lot or blank to put in: for the splitter, never for the laboratory. */
  readonly material?: string;
  /** Kinds that can still be chosen at the rig. */
  readonly oneOf: readonly ControlKind[];
}

/** The bags to label for a hole down to a depth: what the stream will ask for, worked out the evening before. Ends early where numbers run out. */
export function bagRunLines(
  sampling: Sampling,
  hole: { readonly name: string; readonly state: StreamState },
  toMm: number,
): readonly BagRunLine[] {
  const lines: BagRunLine[] = [];
  for (const bag of stream(sampling, hole.state)) {
    if (bag.dueMm > toMm && (bag.fromMm === undefined || bag.fromMm >= toMm)) break;
    const { number, kind, fromMm, toMm: footMm, of, material, oneOf } = bag;
    const place = fromMm === undefined ? undefined : compartmentAt(sampling, hole.state.startMm, fromMm);
    lines.push({
      number,
      hole: hole.name,
      kind,
      oneOf,
      ...(fromMm === undefined || footMm === undefined ? {} : { fromMm, toMm: footMm }),
      ...(place === undefined ? {} : { tray: place.tray, compartment: place.compartment }),
      ...(of === undefined ? {} : { of }),
      ...(material === undefined ? {} : { material }),
    });
  }
  return lines;
}

const depthOf = (mm: number | undefined): string => (mm === undefined ? '' : formatDepth(mm));

/** What is to be put in, in words: `standard middle`, `blank or standard`, `duplicate of ZQ000163`. */
function inWords(line: BagRunLine): string {
  if (line.kind === 'primary') return '';
  if (line.kind === 'field duplicate') return `duplicate of ${line.of ?? '?'}`;
  const named = line.material === undefined ? line.kind : `${line.kind} ${line.material}`;
  const other = line.oneOf.filter((kind) => kind !== line.kind);
  return other.length === 0 ? named : `${named} (or ${other.join(', ')})`;
}

/** The bag run as text, a line a bag with a box to tick. */
export function bagRunText(lines: readonly BagRunLine[]): string {
  const widest = Math.max(0, ...lines.map((line) => line.number.length));
  return lines
    .map((line) => {
      const metre = line.fromMm === undefined ? '' : `${depthOf(line.fromMm)}–${depthOf(line.toMm)}`;
      const tray = line.kind !== 'primary' ? '' : `tray ${line.tray} no. ${line.compartment}`;
      return `[ ] ${line.number.padEnd(widest)}  ${metre.padEnd(11)}  ${inWords(line) || tray}`.trimEnd();
    })
    .join('\n');
}

/**
 * The bag run as CSV for a label printer (RFC 4180): number, hole, metre, kind. The labels go to the laboratory on the bags, so
 * neither the material of a control nor the primary of a duplicate is in it.
 */
export function bagRunCsv(lines: readonly BagRunLine[]): string {
  return csvText([
    ['number', 'hole', 'from_m', 'to_m', 'tray', 'compartment'],
    ...lines.map((line) => {
      const seen = line.kind === 'primary';
      return [
        line.number,
        line.hole,
        seen ? depthOf(line.fromMm) : '',
        seen ? depthOf(line.toMm) : '',
        seen ? (line.tray ?? '') : '',
        seen ? (line.compartment ?? '') : '',
      ];
    }),
  ]);
}

/** The bag run as one HTML page to print for the splitter, with a box to tick and every control in bold, and the driller's word before hands go near. */
export function bagRunHtml(lines: readonly BagRunLine[], title: string): string {
  const rows = lines.map((line) => {
    const cells = [
      '☐',
      line.number,
      line.hole,
      depthOf(line.fromMm),
      depthOf(line.toMm),
      line.tray === undefined || line.kind !== 'primary' ? '' : `${line.tray} / ${line.compartment}`,
      inWords(line),
    ].map((cell) => `<td>${htmlText(cell)}</td>`);
    return `<tr${line.kind === 'primary' ? '' : ' class="control"'}>${cells.join('')}</tr>`;
  });
  return [
    '<!doctype html>',
    `<html lang="en"><head><meta charset="utf-8"><title>${htmlText(title)}</title>`,
    '<style>body{font:14px sans-serif}table{border-collapse:collapse}td,th{border:1px solid;padding:3px 8px;text-align:left}',
    'thead{display:table-header-group}tr{break-inside:avoid}.control{font-weight:bold}</style></head><body>',
    `<h1>${htmlText(title)}</h1>${WHAT_IT_IS_NOT_HTML}<p><b>${htmlText(NEAR_SPLITTER)}</b></p>`,
    '<table><thead><tr><th></th><th>number</th><th>hole</th><th>from m</th><th>to m</th><th>tray / no.</th><th>put in</th></tr></thead><tbody>',
    ...rows,
    '</tbody></table></body></html>',
    '',
  ].join('\n');
}
