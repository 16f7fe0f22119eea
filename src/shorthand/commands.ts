import { type Depth, parseDepth } from '../quantity/depth.ts';
import type { Interval } from '../quantity/interval.ts';
import { alone, type Command, type CommandWord, readInterval, wrong } from './command.ts';
import type { Wrong } from './meaning.ts';
import { nearWords } from './near.ts';
import { inOwnNames, type OwnNames } from './own-names.ts';
import { type ItemsContext, readItems } from './read-items.ts';
import { RIG_COMMANDS } from './rig-commands.ts';
import { type Refusal, refusal, type Said, type Suggestion } from './said.ts';

/** A command of the line. `insisted`: a last `=` takes the place of its preview (in a pipe no one sees one), or answers what it asks. */
export type CommandLine = {
  readonly kind: 'command';
  readonly word: string;
  readonly text: string;
  readonly position: number;
  readonly insisted: boolean;
  readonly command: Command;
};

/** Items said of every row in a range: `;44-49 py2`. */
export type RangeLine = Interval & {
  readonly kind: 'range';
  readonly items: readonly Said[];
  readonly insisted: boolean;
  /** Said of the row that holds this depth: `;at 44.6 ws2`. The interval is that depth alone. */
  readonly at?: Depth;
};

/** How a range is amended, for the help beside {@link COMMANDS}. */
export const RANGE_FORM = { form: ';44-49 py2', does: 'Say something of every row in a range' } as const;

/** How an event is put into a logged row, for the help beside {@link COMMANDS}. */
export const AT_FORM = {
  form: ';at 44.6 ws2',
  does: 'Put an event at a depth into its row; ahead of the log it waits for it',
} as const;

/** Every word that can follow `;`: one spelling each, in the order of the help. */
export const COMMANDS: readonly CommandWord[] = [
  alone('u', { does: 'undo' }, 'Undo the last edit of this sitting'),
  alone('r', { does: 'redo' }, 'Redo what was undone'),
  alone('q', { does: 'leave' }, 'Leave; everything shown as saved is safe'),
  ...RIG_COMMANDS,
  {
    word: 'later',
    form: ';later reason',
    does: 'Put the control that is due off; its number stays kept for it',
    previewed: false,
    read: (text) =>
      text === '' ? wrong('a reason', ';later no blanks on site') : { does: 'put control off', reason: text },
  },
  {
    word: 'bag',
    form: ';bag 46-47 163, ;bag duplicate 46-47 164, ;bag standard 166, ;bag blank 167',
    does: 'Record by hand what a bag holds, by its last digits; numbers between it and the next stay due',
    previewed: false,
    asks: true,
    read: readBag,
  },
  {
    word: 'spoiled',
    form: ';spoiled 163 torn',
    does: 'A bag is torn or lost: its number is never used again',
    previewed: false,
    read: (text) => {
      const [number, ...reason] = text.split(/ +/);
      if (number === undefined || reason.length === 0)
        return wrong('a bag number and a reason', ';spoiled 163 torn');
      return { does: 'spoiled bag', number, reason: reason.join(' ') };
    },
  },
  {
    word: 'spare',
    form: ';spare 163, or ;spare 163 320 torn with the number on the spare',
    does: 'A torn bag is replaced by a spare: the last one of the run, or the one given',
    previewed: false,
    read: readSpare,
  },
  {
    word: 'copy',
    form: ';copy 44-46, or ;copy 44-46 50',
    does: 'Log rows again: next in the log, or from a depth',
    previewed: true,
    read: readCopy,
  },
  {
    word: 'shift',
    form: ';shift 44-46 1, or ;shift 44-46 -1',
    does: 'Move rows down by metres, up with a minus',
    previewed: true,
    read: readShift,
  },
  overInterval('clear', 'Take rows out: not logged again'),
  overInterval('insert', 'Put a forgotten interval in; rows below move down'),
  {
    word: 'split',
    form: ';split 46.5',
    does: 'Make two rows of the one that holds this depth',
    previewed: true,
    read: (text) => {
      const atMm = parseDepth(text);
      return atMm === undefined ? wrong('a depth', ';split 46.5') : { does: 'split', atMm };
    },
  },
  overInterval('merge', 'Make one row of several'),
];

/** The words of {@link COMMANDS}, each with its form and what it does, as completions. */
export const COMMAND_WORDS: readonly Suggestion[] = [{ word: 'at', ...AT_FORM }, ...COMMANDS].map(
  ({ word, form, does }) => ({ text: word, label: `${form}: ${does}` }),
);

function overInterval(word: 'clear' | 'insert' | 'merge', does: string): CommandWord {
  return {
    word,
    form: `;${word} 44-46`,
    does,
    previewed: true,
    read: (text) => {
      const interval = readInterval(text);
      return interval === undefined
        ? wrong('two depths, the upper first', `;${word} 44-46`)
        : { does: word, ...interval };
    },
  };
}

function readBag(text: string): Command | Wrong {
  const parts = text.split(/ +/);
  const [kind = '', number] = parts;
  if ((kind === 'standard' || kind === 'blank') && number !== undefined && parts.length === 2) {
    return { does: 'control', kind, number };
  }
  const isDuplicate = kind === 'duplicate';
  const [rows, primary, ...more] = isDuplicate ? parts.slice(1) : parts;
  const interval = readInterval(rows ?? '');
  if (interval === undefined || primary === undefined || more.length > 0) {
    return wrong('what is in the bag, then its number', ';bag 46-47 163');
  }
  return { does: 'bag', kind: isDuplicate ? 'duplicate' : 'primary', number: primary, ...interval };
}

/** `163`, `163 torn`, `163 320 torn`: the torn one, the spare if it is said, why. */
function readSpare(text: string): Command | Wrong {
  const [number = '', ...words] = text.split(/ +/);
  const isNumber = (word: string | undefined) =>
    word !== undefined && /^(?:[A-Z0-9][A-Z0-9-]*\d|[a-z-]*\d{3,})$/.test(word);
  if (!isNumber(number)) return wrong('the last digits of the torn bag', ';spare 163 torn');
  const spare = isNumber(words[0]) ? words[0] : undefined;
  const reason = (spare === undefined ? words : words.slice(1)).join(' ');
  return {
    does: 'spare',
    number,
    ...(spare === undefined ? {} : { spare }),
    reason: reason === '' ? 'torn' : reason,
  };
}

function readCopy(text: string): Command | Wrong {
  const [rows = '', to, ...more] = text.split(/ +/);
  const interval = readInterval(rows);
  const atMm = to === undefined ? undefined : parseDepth(to);
  if (interval === undefined || more.length > 0 || (to !== undefined && atMm === undefined)) {
    return wrong('two depths, then a depth to copy to', ';copy 44-46 50');
  }
  return { does: 'copy', ...interval, ...(atMm === undefined ? {} : { atMm }) };
}

function readShift(text: string): Command | Wrong {
  const [rows = '', by = '', ...more] = text.split(/ +/);
  const interval = readInterval(rows);
  const distance = parseDepth(by.replace(/^-/, ''));
  if (interval === undefined || distance === undefined || distance === 0 || more.length > 0) {
    return wrong('two depths, then how many metres to move', ';shift 44-46 1');
  }
  return { does: 'shift', ...interval, byMm: by.startsWith('-') ? -distance : distance };
}

/** What a command is read with, and the names of the project for the examples in a refusal. */
type CommandContext = ItemsContext & { readonly own?: OwnNames | undefined };

/** Reads a line that starts with `;`: a range with what is said of it, or a word with its text. */
export function parseCommand(line: string, context: CommandContext): CommandLine | RangeLine | Refusal {
  const [, word = '', space = '', rest = ''] = /^;(\S*)( *)(.*)$/s.exec(line) ?? [];
  const position = 1 + word.length + space.length;
  if (/^[\d.]/.test(word)) return parseRange(line, context, word, position);
  if (word === 'at') return parseAt(line, context, rest, position);
  const known = COMMANDS.find((each) => each.word === word);
  if (known === undefined) return unknownWord(word, context.own);
  const insisted = (known.previewed || known.asks === true) && rest.endsWith('=');
  const text = insisted ? rest.slice(0, -1).trimEnd() : rest;
  const command = known.read(text);
  if ('problem' in command) {
    return refusal(
      { position: 0, length: line.length },
      `;${word}: ${command.problem}`,
      inOwnNames(command.remedy, context.own),
    );
  }
  return { kind: 'command', word, text, position, insisted, command };
}

/** `44.6 ws2`: events at a depth, in the row that holds it. */
function parseAt(line: string, context: CommandContext, rest: string, position: number): RangeLine | Refusal {
  const [, depth = '', space = ''] = /^(\S+)( +)/.exec(rest) ?? [];
  const at = parseDepth(depth);
  if (at === undefined)
    return refusal(
      { position: 0, length: line.length },
      ';at: Needs a depth, then what is there',
      inOwnNames(`Type it like ${AT_FORM.form}`, context.own),
    );
  const items = readItems(context, line, position + depth.length + space.length);
  if (items.kind === 'refused') return items;
  const other = items.said.find(({ says }) => !('event' in says));
  if (other !== undefined || items.said.length === 0)
    return refusal(
      other ?? { position: 0, length: line.length },
      'Only events are at a depth of their own',
      inOwnNames(
        `Type one like ${AT_FORM.form}; the rest of a row is said of the whole row, ;44-45 py2`,
        context.own,
      ),
    );
  if (items.remark !== undefined)
    return refusal(
      { position, length: rest.length },
      'An event takes no remark',
      'Open the row with ↑ to remark on it',
    );
  const placed = items.said.map((item): Said => {
    if (!('event' in item.says) || item.says.gone === true) return item;
    return { ...item, says: { ...item.says, at: { mm: at, isTail: false } } };
  });
  const insisted = items.insisted || items.said.at(-1)?.insisted === true;
  return { kind: 'range', at, fromMm: at, toMm: at, items: placed, insisted };
}

function parseRange(
  line: string,
  context: CommandContext,
  depths: string,
  position: number,
): RangeLine | Refusal {
  const interval = readInterval(depths);
  if (interval === undefined) {
    return refusal(
      { position: 1, length: depths.length },
      `${depths} is not a range`,
      inOwnNames('Type two depths, the upper first: ;44-49 py2', context.own),
    );
  }
  const items = readItems(context, line, position);
  if (items.kind === 'refused') return items;
  const span = { position, length: line.length - position };
  if (items.said.length === 0)
    return refusal(
      span,
      'Nothing is given for these rows',
      inOwnNames('Type what to change: ;44-49 py2', context.own),
    );
  if (items.remark !== undefined)
    return refusal(span, 'A range takes no remark', 'Open the row with ↑ to remark on it');
  const insisted = items.insisted || items.said.at(-1)?.insisted === true;
  return { kind: 'range', ...interval, items: items.said, insisted };
}

/** Words that were commands once, with the one that does it now. A void is a cavity in the ground and nothing else. */
const RENAMED: Readonly<Record<string, readonly string[] | undefined>> = { void: ['spoiled'] };

function unknownWord(word: string, own: OwnNames | undefined): Refusal {
  const words = COMMANDS.map((each) => each.word);
  const meant = RENAMED[word.toLowerCase()] ?? nearWords(word.toLowerCase(), words);
  const suggestions = COMMANDS.filter((each) => meant.includes(each.word)).map(({ word: text, does }) => ({
    text: `;${text}`,
    label: does,
  }));
  const remedy = `F1 lists every word and Tab completes one; a range is typed like ${inOwnNames(RANGE_FORM.form, own)}`;
  if (word === '') return refusal({ position: 0, length: 1 }, '; starts a command', remedy);
  return refusal({ position: 1, length: word.length }, `No command is called ${word}`, remedy, suggestions);
}
