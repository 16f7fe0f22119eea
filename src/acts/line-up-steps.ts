import type { Finding } from '../finding/finding.ts';
import { azimuth, formatAzimuth, NORTH_LETTERS } from '../quantity/azimuth.ts';
import { dip } from '../quantity/dip.ts';
import { localTime } from '../quantity/stamp.ts';
import { placeOf } from '../standing/survey.ts';
import { checkAzimuthOnCircle } from '../survey/checks/azimuth-off-circle.ts';
import { checkDipSlip } from '../survey/checks/dip-slip.ts';
import { expectedReading, recogniseReading } from '../survey/collar/compass.ts';
import { NORTH_OF_WAY } from '../survey/collar/line-up.ts';
import { collarFixPoor } from '../survey/findings.ts';
import { toNorth } from '../survey/norths/norths.ts';
import { doubtsOfCollar, readCollar } from './collar-taken.ts';
import type { LineUpTaken } from './line-up.ts';
import type { LineUpContext, LineUpReading } from './line-up-order.ts';
import { isName, speakerProblem } from './speakers.ts';

/** What a typed value came to: what was read with it, perhaps with something to say; or why it was not taken. */
export type Taken<F extends LineUpReading> =
  | { readonly ok: true; readonly form: F; readonly said?: string; readonly stays?: true }
  | { readonly ok: false; readonly problem: string };

const WAYS = ['sight pegs', 'alignment device', 'compass'] as const;

const wrong = (problem: string) => ({ ok: false, problem }) as const;

const withTaken = <F extends LineUpReading>(form: F, more: Partial<LineUpTaken>) =>
  ({ ok: true, form: { ...form, taken: { ...form.taken, ...more } } }) as const;

const insisted = (text: string) => ({ insists: text.endsWith('='), text: text.replace(/\s*=$/, '') });

const wordsOf = (finding: Finding) =>
  `${finding.problem.charAt(0).toUpperCase()}${finding.problem.slice(1)}. ${finding.remedy}`;

/** Takes what was typed at a step. Nothing typed keeps what is there, or goes on without, where the step allows it. */
export function takeTyped<F extends LineUpReading>(form: F, typed: string, context: LineUpContext): Taken<F> {
  const text = typed.trim();
  switch (form.step) {
    case 'cautions':
      return takeCautions(form, text, context);
    case 'permission':
      return takePermission(form, text, context);
    case 'way':
      return takeWay(form, text);
    case 'azimuth':
      return takeAzimuth(form, text, context);
    case 'distance':
      return takeDistance(form, text);
    case 'compass':
      return takeCompass(form, text, context);
    case 'crew dip':
    case 'clinometer':
      return takeDip(form, text, context);
    case 'collar':
      return takeCollar(form, text, context);
    case 'result':
      return { ok: true, form };
  }
}

function takeCautions<F extends LineUpReading>(form: F, text: string, context: LineUpContext): Taken<F> {
  const bySigner = text === '' || text.toLowerCase() === 'read';
  if (!bySigner && !isName(text))
    return wrong(`“${text}” names no one. Type read, or the names of those who have read them.`);
  return withTaken(form, {
    cautionsReadBy: `${bySigner ? context.person : text}, ${localTime(context.now)}`,
  });
}

/** Whoever signs for the line-up goes to the mast: the word that it is safe comes from the driller. */
function takePermission<F extends LineUpReading>(form: F, text: string, context: LineUpContext): Taken<F> {
  if (text === '')
    return form.taken.permissionBy === undefined
      ? wrong('Type who gave permission. Without it no check is made at the rig.')
      : { ok: true, form };
  const { people } = context.project.settings;
  const problem = speakerProblem(people, context.person, text, 'driller');
  if (problem === undefined) return withTaken(form, { permissionBy: text });
  const driller = people.find(({ role }) => role === 'driller')?.name;
  return wrong(
    `${problem}. Ask the driller, then type the driller’s name${driller === undefined ? '' : `, like ${driller}`}.`,
  );
}

function takeWay<F extends LineUpReading>(form: F, text: string): Taken<F> {
  const way = text === '' ? form.taken.way : (WAYS[Number(text) - 1] ?? wayNamed(text));
  if (way === undefined) return wrong('Type 1 or pegs, 2 or device, 3 or compass.');
  if (way === form.taken.way) return { ok: true, form };
  const { azimuth: _read, ...others } = form.taken;
  return { ok: true, form: { ...form, taken: { ...others, way } } };
}

/** The way whose words begin as those that are typed: `p`, `pegs`, `dev`, `sight`. */
function wayNamed(text: string): (typeof WAYS)[number] | undefined {
  const typed = text.toLowerCase();
  const found = WAYS.filter(
    (way) => way.startsWith(typed) || way.split(' ').some((word) => word.startsWith(typed)),
  );
  return found.length === 1 ? found[0] : undefined;
}

function takeAzimuth<F extends LineUpReading>(
  form: F,
  typed: string,
  { here, hole }: LineUpContext,
): Taken<F> {
  const { way } = form.taken;
  if (typed === '')
    return form.taken.azimuth === undefined ? wrong('Type the azimuth of the mast.') : { ok: true, form };
  const { insists, text } = insisted(typed);
  const [, digits, letter = ''] = /^(\d{1,3}(?:\.\d+)?)([tmgl]?)$/.exec(text) ?? [];
  if (digits === undefined || way === undefined)
    return wrong('Type degrees, like 270.5; add t, m, g or l for another north.');
  const [off] = checkAzimuthOnCircle(Number(digits), placeOf(hole));
  if (off !== undefined) return wrong(wordsOf(off));
  const read = azimuth(Number(digits), NORTH_LETTERS[letter] ?? NORTH_OF_WAY[way]);
  const planned = toNorth(here.planned.azimuth, read.north, here.angles);
  const round = planned !== undefined && recogniseReading(read.deg, planned) === 'the other way round';
  if (round && !insists)
    return wrong(
      `${formatAzimuth(read)} is the back-bearing: planned is ${formatAzimuth(planned)}. Read it along the hole, or add = to accept it.`,
    );
  return withTaken(form, { azimuth: read });
}

function takeDistance<F extends LineUpReading>(form: F, text: string): Taken<F> {
  if (text === '') {
    const { distanceM: _now, ...without } = form;
    return { ok: true, form: without as F };
  }
  if (!/^\d{1,3}(\.\d+)?$/.test(text) || Number(text) === 0)
    return wrong('Type metres from the rig, like 20; Enter alone goes on.');
  return { ok: true, form: { ...form, distanceM: Number(text) } };
}

/** A compass reading: `271`, sighted back `91b`; `x` takes the last one out. One that is the other way round is recognised, one that is neither is asked about. */
function takeCompass<F extends LineUpReading>(
  form: F,
  typed: string,
  { here, project }: LineUpContext,
): Taken<F> {
  const { distanceM, taken } = form;
  const along = here.magnetic;
  if (typed === '' || distanceM === undefined) return { ok: true, form };
  if (along === undefined) return wrong('The declination is not known here: a compass can not be used.');
  if (typed === 'x') return { ...withTaken(form, { compass: taken.compass.slice(0, -1) }), stays: true };
  const { insists, text } = insisted(typed);
  const [, digits, back] = /^(\d{1,3}(?:\.\d+)?)(b?)$/.exec(text) ?? [];
  if (digits === undefined || Number(digits) > 360)
    return wrong(
      `Type degrees, like ${expectedReading(along, false).deg.toFixed(0)}; sighted back, like ${expectedReading(along, true).deg.toFixed(0)}b. x takes the last one out.`,
    );
  const reading = { deg: Number(digits) % 360, distanceM, sightedBack: back === 'b' };
  const expected = expectedReading(along, reading.sightedBack);
  const recognised = recogniseReading(reading.deg, expected);
  if (recognised === 'neither' && !insists)
    return wrong(
      `${digits}° is neither the azimuth nor its back-bearing: about ${formatAzimuth(expected)} is expected. Read it again, or add = to accept it.`,
    );
  const near = distanceM < project.survey.compassNearestM;
  const said = near
    ? `Taken, but not counted: nearer to the rig than ${project.survey.compassNearestM} m.`
    : recognised === 'the other way round'
      ? `${digits}° is the other one: ${reading.sightedBack ? 'read along the hole' : 'sighted back'}. It is turned by 180°.`
      : undefined;
  return {
    ok: true,
    stays: true,
    form: { ...form, taken: { ...taken, compass: [...taken.compass, reading] } },
    ...(said === undefined ? {} : { said }),
  };
}

function takeDip<F extends LineUpReading>(form: F, typed: string, { here, hole }: LineUpContext): Taken<F> {
  if (typed === '') return { ok: true, form };
  const { insists, text } = insisted(typed);
  const deg = Number(text);
  if (!/^[+-]?\d{1,2}(\.\d+)?$/.test(text) || Math.abs(deg) > 90)
    return wrong('Type degrees from horizontal, down negative, like -60.');
  const [slip] = checkDipSlip(deg, here.planned.dip, placeOf(hole));
  if (slip !== undefined && !insists) return wrong(`${wordsOf(slip)} Add = to accept it.`);
  return withTaken(form, form.step === 'crew dip' ? { crewDip: dip(deg) } : { clinometerDip: dip(deg) });
}

function takeCollar<F extends LineUpReading>(form: F, typed: string, context: LineUpContext): Taken<F> {
  if (typed === '') return { ok: true, form };
  const { insists, text } = insisted(typed);
  const read = readCollar(context.project, context.hole, text);
  if (!read.ok) return wrong(read.problem);
  const [doubt] = doubtsOfCollar(context.project, context.hole, context.documents, read.collar);
  // What is taken becomes the collar in use: a poor fix only where someone says so.
  const stops = doubt?.severity === 'fault' || doubt?.code === collarFixPoor.code;
  if (doubt !== undefined && stops && !insists) return wrong(`${wordsOf(doubt)} Add = to accept it.`);
  const taken = withTaken(form, { collar: read.collar });
  return doubt === undefined ? taken : ({ ...taken, said: wordsOf(doubt) } as Taken<F>);
}
