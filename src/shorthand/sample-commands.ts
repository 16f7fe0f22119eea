import { parseDepth } from '../quantity/depth.ts';
import {
  type Command,
  type CommandWord,
  type MassesTyped,
  type RigCommand,
  readInterval,
  wrong,
} from './command.ts';
import type { Wrong } from './meaning.ts';
import { CARE_HELP, readCare } from './rod-care.ts';

const CONTROLS = { standard: 'standard', blank: 'blank', duplicate: 'field duplicate' } as const;

/** What is noted of the sample stream beside its bags: hygiene, masses, controls chosen late, photographs of trays. */
export const SAMPLE_COMMANDS: readonly CommandWord[] = [
  {
    word: 'hygiene',
    form: ';hygiene cslh',
    does: `Seen at the latest rod: ${CARE_HELP}`,
    previewed: false,
    read: (text) => {
      const care = readCare(text);
      return care === undefined
        ? wrong(`letters, each once: ${CARE_HELP}`, ';hygiene cslh')
        : { does: 'hygiene', care };
    },
  },
  {
    word: 'mass',
    form: ';mass 44-45 bulk 38.2 split 3.1, or ;mass 44-45 split 3.1 duplicate 3.0, or ;mass 44-45 moisture 4',
    does: 'Masses in kilograms: bulk bag, calico, second calico; percent of water in them, from an oven or the laboratory',
    previewed: false,
    read: readMasses,
  },
  {
    word: 'choose',
    form: ';choose blank past the lode, or ;choose standard, or ;choose duplicate',
    does: 'The kind of the next control that can be chosen late, with the reason (without one where the log asks for it)',
    previewed: false,
    read: (text) => {
      const [word = '', ...reason] = text.split(/ +/);
      if (!isControl(word)) return wrong('standard, blank or duplicate', ';choose blank past the lode');
      const because = reason.join(' ');
      return {
        does: 'choose control',
        kind: CONTROLS[word],
        ...(because === '' ? {} : { reason: because }),
      };
    },
  },
  {
    word: 'scan',
    form: ';scan 46 ZQ000163, or ;scan 46 second ZQ000163 under a chute',
    does: 'Check that a bag is in the right place: a depth within its metre, the first or second chute',
    previewed: false,
    read: readScan,
  },
  {
    word: 'swap',
    form: ';swap 163',
    does: 'A duplicate and its primary hang on each other’s chute: their numbers change places',
    previewed: false,
    read: (text) =>
      /^[A-Z0-9][A-Z0-9-]*$/i.test(text)
        ? { does: 'swap pair', lastDigits: text }
        : wrong('the last digits of one of the two', ';swap 163'),
  },
  {
    word: 'bit',
    form: ';bit 138.6, or ;bit 138.6 @60 with the depth it was measured at',
    does: 'The bit as the driller measured it, in millimetres: the masses that the metres hold follow it',
    previewed: false,
    asks: true,
    read: (text) => {
      const [, mm, at] = /^(\d{2,3}(?:\.\d{1,2})?)(?: +@([\d.]+))?$/.exec(text) ?? [];
      const atMm = at === undefined ? undefined : parseDepth(at);
      return mm === undefined || (at !== undefined && atMm === undefined)
        ? wrong(
            'the diameter in millimetres, and a depth after @ if it was measured before',
            ';bit 138.6 @60',
          )
        : { does: 'bit', bitMm: Number(mm), ...(atMm === undefined ? {} : { atMm }) };
    },
  },
  {
    word: 'tick',
    form: ';tick 163, or ;tick 163-170',
    does: 'Tick off calicos that are labelled and ready; the same number again takes the tick away',
    previewed: false,
    read: (text) => {
      const [, first, last] = /^([A-Z]*\d+)(?:-([A-Z]*\d+))?$/i.exec(text) ?? [];
      return first === undefined
        ? wrong('the last digits of a calico, or of the first and the last', ';tick 163-170')
        : { does: 'tick', first, ...(last === undefined ? {} : { last }) };
    },
  },
  {
    word: 'photo',
    form: ';photo 3 IMG_0412.JPG',
    does: 'The photograph of a chip tray: tray number, file name',
    previewed: false,
    read: (text) => {
      const [, tray, file] = /^(\d{1,3}) +([^\s/\\]+)$/.exec(text) ?? [];
      return tray === undefined || file === undefined || Number(tray) === 0
        ? wrong('the number of a tray and the name of a file, without its folder', ';photo 3 IMG_0412.JPG')
        : { does: 'photo', tray: Number(tray), file };
    },
  },
];

function isControl(word: string): word is keyof typeof CONTROLS {
  return Object.hasOwn(CONTROLS, word);
}

/** `46 ZQ000163`, `46-47 second ZQ000163`: where the bag lies, the chute if it hangs under one, its number. */
export function readScan(text: string): Command | Wrong {
  const [, from = '', chute, number = ''] =
    /^([\d.]+)(?:-[\d.]+)?(?: +(first|second))? +([A-Z0-9][A-Z0-9-]*)$/i.exec(text) ?? [];
  const depthMm = parseDepth(from);
  if (depthMm === undefined)
    return wrong('a depth within its metre, then the number of the bag', ';scan 46 ZQ000163');
  if (chute !== 'first' && chute !== 'second') return { does: 'scan', number, depthMm };
  return { does: 'scan', number, depthMm, chute };
}

/** `44-45 bulk 38.2 split 3.1`: a metre, and what was weighed, each once. */
function readMasses(text: string): RigCommand | Wrong {
  const form = ';mass 44-45 bulk 38.2 split 3.1';
  const [metre = '', ...words] = text.split(/ +/);
  const over = readInterval(metre);
  const pairs = words.flatMap((word, index) => (index % 2 === 0 ? [[word, words[index + 1] ?? '']] : []));
  const known = pairs.every(([what]) => ['bulk', 'split', 'duplicate', 'moisture'].includes(what ?? ''));
  const once = new Set(pairs.map(([what]) => what)).size === pairs.length;
  if (over === undefined || pairs.length === 0 || !known || !once || words.length % 2 === 1)
    return wrong(
      'a metre, then bulk, split or duplicate with its kilograms, or moisture with its percent',
      form,
    );
  const masses: MassesTyped = Object.fromEntries(pairs);
  return { does: 'mass', ...over, masses };
}
