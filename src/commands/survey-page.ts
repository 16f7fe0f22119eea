import { safeLines } from '../finding/safe-text.ts';
import { htmlText } from '../finding/sheet-text.ts';
import { WHAT_IT_IS_NOT_HTML } from '../finding/what-it-is-not.ts';
import { headerOf } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import type { Document } from '../record/document.ts';
import { surveyOf } from '../standing/survey.ts';
import { pictureOf } from '../standing/survey-pictures.ts';
import { svgOf } from '../survey/pictures/svg.ts';
import { surveyText } from './survey-text.ts';

/** Width of a picture on its own and on the page, pixels. */
const WIDTH = 640;

/** The hole from above or from the side as an SVG document; undefined while no direction is known. */
export function surveySvg(
  project: Project,
  hole: Document,
  view: 'plan' | 'section',
  alone = true,
): string | undefined {
  const picture = pictureOf(project, hole, view);
  return picture === undefined ? undefined : `${svgOf(picture, WIDTH, alone)}\n`;
}

/** Nothing on the page can run or fetch anything, whatever stands in a name. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

/** One page for a browser or a printer: both pictures, and the survey in words. It needs no other file. */
export function surveyPage(project: Project, hole: Document, documents: Iterable<Document>): string {
  const name = htmlText(safeLines(headerOf(hole).name));
  const pictures = (['plan', 'section'] as const).map((view) => surveySvg(project, hole, view, false) ?? '');
  const north = surveyOf(project, hole).north;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<title>${name}, survey</title>
<style>body{font-family:sans-serif;color:#000;background:#fff;margin:1.5em}pre{font-size:13px;white-space:pre-wrap}svg{max-width:100%;height:auto}</style>
</head>
<body>
<h1>${name}, survey</h1>
${WHAT_IT_IS_NOT_HTML}
<p>Azimuths from ${htmlText(north)} north. Below the last shot the hole is drawn straight on: no one has measured there.</p>
${pictures.join('\n')}
<pre>${htmlText(safeLines(surveyText(project, hole, documents)))}</pre>
</body>
</html>
`;
}
