import type { Interval } from '../quantity/interval.ts';
import { alone, type CommandWord, type RigCommand, readInterval, wrong } from './command.ts';
import { readReason, readUntil } from './reason.ts';
import { isRodText } from './rod-words.ts';
import { SAMPLE_COMMANDS } from './sample-commands.ts';

const RECOVERIES = ['full', 'good', 'fair', 'poor', 'none'] as const;

/** What is noted at the drilled head: rods, bags, the sample stream, shots, the driller's stops. */
export const RIG_COMMANDS: readonly CommandWord[] = [
  {
    word: 'rod',
    form: ';rod, or ;rod 163 with the last digits of the last bag (x6: six bags, @54.5: another depth, cslh: as ;hygiene; where it asks for a look: first158, heavy or even, controls1)',
    does: 'Rod done: stamp time and depth, check the bags',
    previewed: false,
    read: (text) => {
      if (text === '') return { does: 'rod done' };
      return isRodText(text)
        ? { does: 'rod done', check: text }
        : wrong('the last digits of the bag', ';rod 163');
    },
  },
  {
    word: 'fix',
    form: ';fix, or ;fix 163 x6 with what is read now',
    does: 'Fix a bag mismatch that was noted at a rod, the oldest first',
    previewed: false,
    read: (text) => {
      if (text === '') return { does: 'mend' };
      return isRodText(text)
        ? { does: 'mend', check: text }
        : wrong('nothing, or what is read on the bags now', ';fix 163 x6');
    },
  },
  ...(['dry', 'moist', 'wet'] as const).map((moisture) =>
    overRod(moisture, (over) => ({ does: 'moisture', moisture, ...over }), `The sample comes up ${moisture}`),
  ),
  felt('solid', 'Driller: nothing dropped, no cavity felt'),
  felt('cavity', 'Driller: the rods dropped, a cavity felt'),
  {
    word: 'recovery',
    form: ';recovery poor, or ;recovery poor 44-46 (full, good, fair, poor, none)',
    does: 'Recovery by eye',
    previewed: false,
    read: (text) => {
      const [word, ...rest] = text.split(/ +/);
      const recovery = RECOVERIES.find((each) => each === word);
      const over = overOf(rest.join(' '));
      return recovery === undefined || over === undefined
        ? wrong('full, good, fair, poor or none', ';recovery poor 44-46')
        : { does: 'recovery', recovery, ...over };
    },
  },
  ...SAMPLE_COMMANDS,
  overRod('contaminated', (over) => ({ does: 'contaminated', ...over }), 'The sample is contaminated'),
  {
    word: 'numbered',
    form: ';numbered ZQ000201 ZQ000320, or ;numbered 201 320 where it is clear which, or ;numbered rest for those left over from the last hole',
    does: 'Bags numbered for this hole, first and last',
    previewed: false,
    read: (text) => {
      if (text === 'rest') return { does: 'take labels left over' };
      const [first, last, ...more] = text.split(/ +/);
      return !first || last === undefined || more.length > 0
        ? wrong('the first and the last number', ';numbered ZQ000201 ZQ000320')
        : { does: 'number bags', first, last };
    },
  },
  {
    word: 'place',
    form: ';place, or ;place 166 with the last digits of its number',
    does: 'Place a control that was put off',
    previewed: false,
    read: (text) => {
      if (text === '') return { does: 'place control' };
      return /^[A-Z0-9-]+$/i.test(text)
        ? { does: 'place control', lastDigits: text }
        : wrong('the last digits of its number', ';place 166');
    },
  },
  {
    word: 'shot',
    form: ';shot 60 -59.5 271.2',
    does: 'A survey shot: depth (b63: of the bit), dip, azimuth as read (none: leave it out), then total field and magnetic dip if given; = insists. corrects at the end: the shot there was misread',
    previewed: false,
    read: (text) =>
      SHOT.test(text.replace(/ +/g, ' '))
        ? { does: 'shot', said: text }
        : wrong('depth, dip, azimuth', ';shot 60 -59.5 271.2'),
  },
  {
    word: 'run',
    form: ';run north-seeking in open offset 1.5 tool gyro 2',
    does: 'Begin a survey run: north-seeking, aligned or magnetic; then what is not as usual',
    previewed: false,
    read: (text) =>
      text === ''
        ? wrong('the class of tool first', ';run north-seeking in open offset 1.5 tool gyro 2')
        : { does: 'survey run', said: text },
  },
  {
    word: 'reject',
    form: ';reject 90 misread, or ;reject 30-60 azimuth near steel, or ;reject 30-180 of gyro 3: misaligned',
    does: 'Shots that are not used, or their azimuths alone, with why (of: which run, where several have shots there)',
    previewed: false,
    read: (text) =>
      text === ''
        ? wrong('a depth and a reason', ';reject 90 misread')
        : { does: 'reject shots', said: text },
  },
  {
    word: 'use',
    form: ';use 90 read again, it is so',
    does: 'Rejected shots are used again, said as for ;reject',
    previewed: false,
    read: (text) =>
      text === '' ? wrong('a depth and a reason', ';use 90 it is so') : { does: 'use shots', said: text },
  },
  {
    word: 'plan',
    form: ';plan 270g -60 180',
    does: 'Give the hole a plan, or a new one (deepened): azimuth with its north (t, m, g, l), dip, depth',
    previewed: false,
    read: (text) =>
      text === '' ? wrong('azimuth, dip, depth', ';plan 270g -60 180') : { does: 'plan', said: text },
  },
  {
    word: 'expect',
    form: ';expect lode 70-78 seen sulphides PYR>=2, or ;expect old stope 80-84 void, or ;expect lode none',
    does: 'A contact or zone that the plan expects: name, depth, hazard (fibre, void), what in the log tells it',
    previewed: false,
    read: (text) =>
      text === ''
        ? wrong('a name and a depth', ';expect lode 70-78 seen sulphides PYR>=2')
        : { does: 'expect', said: text },
  },
  alone('capped', { does: 'collar', state: 'capped' }, 'The collar is capped'),
  alone('plugged', { does: 'collar', state: 'plugged' }, 'The collar is plugged'),
  decision('hold', 'held', 'Hold the hole open: call before it is ended'),
  {
    word: 'extend',
    form: ';extend to 132 reason, or ;extend 12 m more, or ;extend called Ines Falk: to 132, zone open',
    does: 'Go on past the plan or what was asked (no depth: a rod). It ends a hold. A call settles the rule it names, or the only one that asks',
    previewed: false,
    asks: true,
    read: (text) => {
      const { reason, called } = readReason(text);
      if (reason === '') return wrong('a depth or a reason', ';extend called Ines Falk: to 132, zone open');
      const until = readUntil(reason);
      // A figure alone may be a depth or a length, and taken for a reason it would be neither.
      if (until === undefined && /^\d+(\.\d+)? ?m?(?=$|[\s,:;.])/.test(reason))
        return wrong(
          '"to" before a depth, or "m more" after a length',
          ';extend 6 m more, or ;extend to 132',
        );
      return {
        does: 'decide',
        kind: 'extended',
        reason,
        ...(called === undefined ? {} : { called }),
        ...(until === undefined ? {} : { until }),
      };
    },
  },
  {
    word: 'not-lined-up',
    form: ';not-lined-up reason',
    does: 'Why the hole is drilled without a line-up: check and the note then say the reason',
    previewed: false,
    read: (text) =>
      text === ''
        ? wrong('a reason', ';not-lined-up begun before the laptop came')
        : { does: 'not lined up', reason: text },
  },
  {
    word: 'stop',
    form: ';stop reason',
    does: 'The driller stops for safety or the hole: no advice on ending is shown',
    previewed: false,
    read: (text) => (text === '' ? wrong('a reason', ';stop hose burst') : { does: 'stop', reason: text }),
  },
  alone('go', { does: 'stop over' }, "The driller's stop is over"),
];

function overRod(
  word: string,
  command: (over: { readonly over?: Interval }) => RigCommand,
  does: string,
): CommandWord {
  return {
    word,
    form: `;${word}, or ;${word} 44-46`,
    does: `${does}: the rod being drilled, or a range`,
    previewed: false,
    read: (text) => {
      const over = overOf(text);
      return over === undefined
        ? wrong('two depths, the upper first, or nothing', `;${word} 44-46`)
        : command(over);
    },
  };
}

/** The driller's word: nothing, an interval, a name, or both. */
function felt(word: 'solid' | 'cavity', does: string): CommandWord {
  return {
    word,
    form:
      word === 'solid'
        ? ';solid, or ;solid 44-50 Mick Tarrant'
        : ';cavity, or ;cavity 44-50 Mick Tarrant; ;cavity 44-50 wrong where it was none',
    does: `${does}: ${
      word === 'solid'
        ? 'from the last rod down to the log, or of that rod; or a range, with who said it'
        : 'below the last rod down to the log, or a range, with who said it'
    }`,
    previewed: false,
    ...(word === 'solid' ? { asks: true as const } : {}),
    read: (text) => {
      const [first = '', ...rest] = text.split(/ +/);
      const over = readInterval(first);
      const driller = (over === undefined ? text : rest.join(' ')).trim();
      if (word === 'cavity' && driller.toLowerCase() === 'wrong')
        return over === undefined
          ? wrong('the metres of the cavity', ';cavity 44-50 wrong')
          : { does: 'no cavity', over };
      if (/^[\d.-]|;/.test(driller))
        return wrong('two depths, the upper first, a name, or nothing', `;${word} 44-50`);
      return {
        does: 'felt',
        felt: word,
        ...(over === undefined ? {} : { over }),
        ...(driller === '' ? {} : { driller }),
      };
    },
  };
}

function decision(word: string, kind: 'held', does: string): CommandWord {
  return {
    word,
    form: `;${word} reason, or ;${word} called Ines Falk: reason`,
    does,
    previewed: false,
    read: (text) => {
      const { reason, called } = readReason(text);
      if (reason === '') return wrong('a reason', `;${word} called Ines Falk: zone still open`);
      return { does: 'decide', kind, reason, ...(called === undefined ? {} : { called }) };
    },
  };
}

/** Nothing, or an interval; undefined for anything else. */
function overOf(text: string): { readonly over?: Interval } | undefined {
  if (text === '') return {};
  const over = readInterval(text);
  return over === undefined ? undefined : { over };
}

/** A depth (`b63`: of the bit), a dip, perhaps an azimuth, field and magnetic dip, perhaps `=`; what they mean is told where the hole is known. */
const SHOT =
  /^b?\d+(\.\d+)? [+-]?\d+(\.\d+)?( \d+(\.\d+)?( \d+(\.\d+)?( [+-]?\d+(\.\d+)?)?)?)?( corrects)?( ?=)?$/;
