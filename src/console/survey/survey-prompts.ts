import { isRejected, openRun } from '../../acts/shot.ts';
import type { SurveyRun } from '../../hole/direction.ts';
import { holeThing } from '../../hole/hole.ts';
import { formatDepth } from '../../quantity/depth.ts';
import type { Document } from '../../record/document.ts';
import type { RunSaid } from '../../survey/shots/run-said.ts';
import type { Prompt } from '../prompt.ts';
import { type Shown, typedLine } from '../screens/shown.ts';
import type { State } from '../state.ts';
import type { Theme } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { RUN_STEPS } from './survey-run.ts';

type SurveyPrompt = Extract<Prompt, { readonly kind: 'survey run' | 'shot' | 'rejection' }>;

/** The questions of the survey: a run begun, a shot, why one is not used. */
export function surveyPrompt(
  _state: State,
  hole: Document,
  prompt: SurveyPrompt,
  width: number,
  theme: Theme,
): Shown {
  const typed = typedLine(prompt.draft, theme);
  switch (prompt.kind) {
    case 'survey run':
      return runShown(prompt, typed, width);
    case 'shot':
      return shotShown(openRun(hole)?.[1], prompt.corrects === true, typed, width);
    case 'rejection':
      return rejectionShown(hole, prompt, typed, width);
  }
}

function runShown(
  prompt: Extract<Prompt, { readonly kind: 'survey run' }>,
  typed: Line,
  width: number,
): Shown {
  const step = RUN_STEPS[prompt.step];
  if (step === undefined) return { title: '', lines: [] };
  const usual = step.usual(prompt.said);
  const said = saidWords(prompt.said);
  return {
    title: 'a new survey run: asked once, it holds for all its shots',
    lines: [
      ...(said === '' ? [] : wrap(`So far: ${said}`, width, 'faint')),
      ...wrap(step.asks, width, 'strong'),
      ...(prompt.step === 0 && prompt.like !== undefined
        ? wrap(`0 the same again: ${runWords(prompt.like)}, read by ${prompt.like.operator}`, width, 'accent')
        : []),
      ...(step.choices ?? []).map((choice, index) =>
        spans([`${index + 1} `, 'accent'], choice === 'mine-grid' ? 'mine grid' : choice, [
          choice === usual ? '   Enter alone takes this' : '',
          'faint',
        ]),
      ),
      ...(step.choices === undefined && usual !== '' ? [line(`Enter alone: ${usual}`, 'faint')] : []),
      typed,
      line('Enter goes on. Esc changes nothing.', 'faint'),
    ],
  };
}

function saidWords({ toolClass, north, pass, inside, tool }: Partial<SurveyRun>): string {
  const parts = [
    toolClass,
    north === undefined ? undefined : northWords(north),
    pass === undefined ? undefined : passWords(pass),
    inside === undefined ? undefined : insideWords(inside),
    tool,
  ];
  return parts.filter((each) => each !== undefined).join(', ');
}

const northWords = (north: SurveyRun['north']) => `${north === 'mine-grid' ? 'mine grid' : north} north`;
const passWords = (pass: SurveyRun['pass']) => (pass === 'single' ? 'single shots' : `run ${pass}`);
const insideWords = (inside: SurveyRun['inside']) => (inside === 'rods' ? 'inside the rods' : 'in open hole');

function shotShown(run: SurveyRun | undefined, corrects: boolean, typed: Line, width: number): Shown {
  const offset = run?.toolOffsetMm ?? 0;
  const bit =
    offset === 0
      ? ''
      : ` The depth is the sensor's: bit depth less ${formatDepth(offset)} m; b63 is a bit depth.`;
  const magnetic =
    run?.toolClass === 'magnetic' ? ' Behind it total field and magnetic dip, if the tool gives them.' : '';
  return {
    title: corrects ? 'a shot corrected: what the tool gave' : 'a shot, as the driller reads it out',
    lines: [
      ...wrap(run === undefined ? '' : runWords(run), width, 'strong'),
      ...wrap(
        `Depth, dip and azimuth, like 60 -59.5 271.2 (no azimuth: leave it out).${magnetic}${bit}`,
        width,
      ),
      typed,
      ...wrap(
        corrects
          ? 'Enter corrects it: the same shot, and what was first typed is kept. A shot taken again with the tool is a new one: Esc, x, then n.'
          : 'Enter records it. run begins another run, for another tool or north. Esc leaves.',
        width,
        'faint',
      ),
    ],
  };
}

function runWords({ toolClass, tool, north, pass, inside }: RunSaid): string {
  return `${toolClass} (${tool}), ${northWords(north)}, ${passWords(pass)}, ${insideWords(inside)}`;
}

function rejectionShown(
  hole: Document,
  prompt: Extract<Prompt, { readonly kind: 'rejection' }>,
  typed: Line,
  width: number,
): Shown {
  const shot = holeThing(hole, 'shots', prompt.shot);
  const what = `${prompt.part === 'azimuth' ? 'azimuth' : 'shot'} at ${formatDepth(shot?.depthMm ?? 0)} m`;
  const again = shot !== undefined && isRejected(shot, prompt.part);
  const words = again
    ? 'Why is it used again? The reason stays in the history.'
    : `Why is it not used? It stays as read${prompt.part === 'azimuth' ? ', and its dip is kept' : ''}; it can be used again later.`;
  return {
    title: again ? `${what}: used again` : `${what}: not used`,
    lines: [
      ...wrap(words, width),
      ...(again
        ? []
        : wrap(
            'Only misheard or mistyped? Esc, then c corrects it: a rejected shot still counts as taken.',
            width,
          )),
      typed,
      line('Enter records it. Esc changes nothing.', 'faint'),
    ],
  };
}
