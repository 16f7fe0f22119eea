import type { LineUpContext } from '../../acts/line-up-order.ts';
import { collarSentences, gridSentences, northSentences } from '../../acts/line-up-sentences.ts';
import { type Azimuth, formatAzimuth } from '../../quantity/azimuth.ts';
import { formatDip } from '../../quantity/dip.ts';
import {
  type CompassReading,
  expectedReading,
  formatExpected,
  recogniseReading,
} from '../../survey/collar/compass.ts';
import { inEveryNorth } from '../../survey/norths/norths.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import type { LineUpForm } from './line-up-form.ts';
import { sentenceLines } from './line-up-result.ts';

/** The plan in every north, with the angles between them and their signs in words. */
export function wayLines(context: LineUpContext, width: number): readonly Line[] {
  const { angles, field, planned } = context.here;
  const norths = inEveryNorth(planned.azimuth, angles, field?.epoch);
  return [
    ...norths.map((one) =>
      spans(`${formatAzimuth(one).padEnd(18)}dip ${formatDip(planned.dip)}`, [
        one.north === planned.azimuth.north ? '  as planned' : '',
        'faint',
      ]),
    ),
    ...northSentences(context).flatMap((each) => sentenceLines(each, width)),
    line('How is the rig set?', 'strong'),
    spans(['1 ', 'accent'], 'surveyed sight pegs (grid)'),
    spans(['2 ', 'accent'], 'alignment device on the mast (true)'),
    spans(['3 ', 'accent'], 'compass (magnetic)'),
  ];
}

/** The azimuth of the mast by pegs or device, beside the plan from the same north. */
export function azimuthLines(form: LineUpForm, { here }: LineUpContext, width: number): readonly Line[] {
  const device = form.taken.way === 'alignment device';
  const north = device ? 'true' : 'grid';
  const planned = inEveryNorth(here.planned.azimuth, here.angles).find((one) => one.north === north);
  return [
    ...wrap(
      device
        ? 'Ask the driller to read out the azimuth of the alignment device on the mast, from true north.'
        : 'Mast azimuth by the sight pegs, from grid north: sighted from outside the exclusion zone.',
      width,
    ),
    ...wrap(
      planned === undefined
        ? `The plan is ${formatAzimuth(here.planned.azimuth)}: it can not be turned to ${north} north here.`
        : `The plan is ${formatAzimuth(planned)}.`,
      width,
      planned === undefined ? 'warn' : 'strong',
    ),
    ...wrap(
      'Behind the number t, m, g or l: it is from true, magnetic, grid or local north.',
      width,
      'faint',
    ),
    ...keptLine(form.taken.azimuth === undefined ? undefined : formatAzimuth(form.taken.azimuth)),
  ];
}

const keptLine = (value: string | undefined): readonly Line[] =>
  value === undefined ? [] : [line(`Read: ${value}. Enter keeps it.`, 'good')];

/** What the compass should read, what it has read so far, and what to do next. */
export function compassLines(
  form: LineUpForm,
  { here, project }: LineUpContext,
  width: number,
): readonly Line[] {
  const { magnetic } = here;
  if (magnetic === undefined) return [];
  const { compassNearestM, magneticGround } = project.survey;
  const alone = form.taken.way === 'compass';
  const taken = form.taken.compass.map((one) => line(readingWords(one, magnetic), 'good'));
  const ask =
    form.step === 'distance'
      ? [
          `How far are you from the rig, in metres? ${compassNearestM} m or more, outside traffic.`,
          'Two distances are needed. Enter alone: no more readings.',
        ]
      : [
          `At ${form.distanceM} m: type a reading, several if you can; sighted back with b, like ${expectedReading(magnetic, true).deg.toFixed(0)}b.`,
          'x takes the last one out. Enter alone: this distance is done.',
        ];
  return [
    ...wrap(capital(formatExpected(magnetic)), width, 'strong'),
    ...(magneticGround
      ? wrap(
          alone
            ? 'The ground here is magnetic: a compass alone is refused. Ask the driller to set the rig by pegs or a device.'
            : 'The ground here is magnetic: take the compass with care.',
          width,
          'alert',
        )
      : []),
    ...taken,
    ...ask.flatMap((each) => wrap(each, width)),
  ];
}

/** A reading as it was recognised: one that is the other end is told so, with the azimuth that it comes to. */
function readingWords(one: CompassReading, along: Azimuth): string {
  const read = `${one.distanceM} m: ${one.deg.toFixed(1)}°`;
  const other = recogniseReading(one.deg, expectedReading(along, one.sightedBack)) === 'the other way round';
  if (!other) return `${read} ${one.sightedBack ? 'sighted back' : 'along the hole'}`;
  const turned = (one.deg + 180) % 360;
  return `${read}, the other end: ${turned.toFixed(1)}° ${one.sightedBack ? 'sighted back' : 'along the hole'}`;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** The dip by the gauge of the crew, then by the clinometer. */
export function dipLines(form: LineUpForm, { here }: LineUpContext, width: number): readonly Line[] {
  const crew = form.step === 'crew dip';
  const kept = crew ? form.taken.crewDip : form.taken.clinometerDip;
  return [
    ...wrap(
      crew
        ? 'Ask the driller to read out the dip that the crew set, by their own gauge.'
        : 'The dip by your own clinometer, on clean straight steel: only once the driller has stopped and isolated the rig and takes you in to the mast. Else leave it out.',
      width,
    ),
    ...wrap(`The plan is ${formatDip(here.planned.dip)}. Down is negative.`, width, 'strong'),
    ...wrap('Enter alone: not read.', width, 'faint').slice(0, kept === undefined ? 1 : 0),
    ...keptLine(kept === undefined ? undefined : formatDip(kept)),
  ];
}

/** The collar position: what there is of it by rank, what was read, what is done about the datum. */
export function collarLines(form: LineUpForm, context: LineUpContext, width: number): readonly Line[] {
  const { collar } = form.taken;
  const positions = collarSentences(context, collar);
  const local = context.project.settings.survey.mineGrid === undefined ? '' : ' (add l for mine grid)';
  return [
    ...wrap('The collar is under the mast: go there only when the driller takes you in.', width, 'warn'),
    ...wrap(
      `Where is the collar? East, north and height in metres${local}; or paste what the GPS sends; or type the path of its file or device.`,
      width,
    ),
    ...(positions.length === 0
      ? [line('No planned position.', 'faint')]
      : positions.flatMap((each) => sentenceLines(each, width))),
    ...wrap(collar === undefined ? 'Enter alone: not taken.' : 'Enter keeps it.', width, 'strong'),
    ...gridSentences(context).flatMap((each) => sentenceLines(each, width)),
    ...wrap('Each position is kept; the best rank is used, and a surveyed one comes later.', width, 'faint'),
  ];
}
