import { type Finding, formatFinding } from '../../finding/finding.ts';
import { htmlText } from '../../finding/sheet-text.ts';
import { WHAT_IT_IS_NOT_HTML } from '../../finding/what-it-is-not.ts';
import { blankSvg, pairsSvg, standardSvg } from './charts-svg.ts';
import { pairLines } from './charts-text.ts';
import type { Quality } from './quality.ts';

/** What is above the charts: a sentence each. */
export interface PageHead {
  readonly title: string;
  readonly lines: readonly string[];
}

/** The charts alone, as parts of an HTML page: for a report that has its own head. */
function qualityHtml({ standards, blanks, pairs }: Quality): string {
  return [
    ...(standards.length === 0
      ? []
      : [
          '<h2>Standards</h2>',
          '<p>Dotted 2 SD (warn), dashed 3 SD (fail). Ring: in; triangle: warn; cross: fail.</p>',
          ...standards.map(standardSvg),
        ]),
    ...(blanks.length === 0
      ? []
      : ['<h2>Blanks</h2>', '<p>Ring: within the limit; cross: over.</p>', ...blanks.map(blankSvg)]),
    ...pairs.flatMap((series) => [
      `<h2>Pairs of ${htmlText(series.analyte)}</h2>`,
      '<p>Triangle: more than 50 % apart.</p>',
      pairsSvg(series),
      `<pre>${htmlText(pairLines(series).join('\n'))}</pre>`,
    ]),
  ].join('\n');
}

/** The controls as one HTML page that needs nothing else: charts, then what was found. */
export function qualityPage(head: PageHead, quality: Quality, findings: readonly Finding[]): string {
  return [
    '<!doctype html>',
    `<html lang="en"><head><meta charset="utf-8"><title>${htmlText(head.title)}</title>`,
    '<style>body{font:11pt sans-serif;margin:1.5cm}svg{display:block;max-width:100%;break-inside:avoid}pre{white-space:pre-wrap}</style></head>',
    `<body><h1>${htmlText(head.title)}</h1>${WHAT_IT_IS_NOT_HTML}`,
    ...head.lines.map((each) => `<p>${htmlText(each)}</p>`),
    qualityHtml(quality),
    '<h2>Found</h2>',
    findings.length === 0
      ? '<p>Nothing.</p>'
      : `<ul>${findings.map((each) => `<li><pre>${htmlText(formatFinding(each))}</pre></li>`).join('')}</ul>`,
    '</body></html>',
    '',
  ].join('\n');
}
