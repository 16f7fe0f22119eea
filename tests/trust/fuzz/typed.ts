import fc from 'fast-check';
import { decode, flush, nothingHeld } from '../../../src/console/terminal/input/decode.ts';
import { namedKeys } from '../../../src/console/terminal/input/keys.ts';
import { depthFromMetres } from '../../../src/quantity/depth.ts';
import { checkRow } from '../../../src/schema/check/row-checks.ts';
import type { LoggingSchema } from '../../../src/schema/logging-schema.ts';
import { COMMANDS } from '../../../src/shorthand/commands.ts';
import { type EntryContext, parseLine } from '../../../src/shorthand/parse.ts';
import { resolveStyle } from '../../support/styles.ts';
import { HOSTILE } from '../vectors.ts';
import { target } from './target.ts';

const STYLE = resolveStyle('orogenic-gold') as LoggingSchema;
const CONTEXT: EntryContext = {
  schema: STYLE,
  above: undefined,
  previous: undefined,
  repeats: 0,
  gloves: false,
  bagPattern: /^MB\d{6}$/,
};
const ROW_ABOVE = parseLine('bawx1ox1si1py2vn5', CONTEXT);
const CONTEXTS: readonly EntryContext[] = [
  CONTEXT,
  ...(ROW_ABOVE.kind === 'row'
    ? [false, true].map((gloves) => ({ ...CONTEXT, above: ROW_ABOVE.row, previous: ROW_ABOVE.row, gloves }))
    : []),
];

const strokes = STYLE.fields.flatMap((field) =>
  'pair' in field && field.pair !== undefined ? [field.pair, `${field.name}'`] : [`${field.name}'`],
);
const codes = Object.values(STYLE.lists).flatMap((list) =>
  list.codes.flatMap((code) => [code.pair ?? '', code.key ?? '', code.code]),
);
const words = COMMANDS.map((command) => command.form);
const piece = fc.oneof(
  fc.constantFrom(
    ...strokes,
    ...codes,
    ...words,
    'nr',
    '.',
    '=',
    ',',
    '/',
    ';',
    "'",
    "''",
    ' ',
    '-',
    '0',
    '1e9',
    '99999999999999999999',
    '.5.5',
  ),
  fc.nat(1200).map(String),
  fc.constantFrom(...HOSTILE),
  fc.string({ maxLength: 4 }),
);

/** Lines of the shorthand. */
export const lines = target(
  'an entry line',
  fc.tuple(
    fc.array(piece, { maxLength: 9 }).map((pieces) => pieces.join('')),
    fc.nat(CONTEXTS.length - 1),
  ),
  ([text, at]) => {
    const parsed = parseLine(text, CONTEXTS[at] ?? CONTEXT);
    if (parsed.kind === 'refused') {
      if (parsed.problem.trim() === '' || parsed.remedy.trim() === '')
        return 'refused without problem or remedy';
      return parsed.position < 0 || parsed.position > text.length
        ? `refused at ${parsed.position}`
        : undefined;
    }
    if (parsed.kind !== 'row') return undefined;
    const row = { ...parsed.row, fromMm: depthFromMetres(0), toMm: depthFromMetres(1) };
    const faults = checkRow(STYLE, row, { hole: 'ZQRC004' }).filter(
      (finding) => finding.severity === 'fault',
    );
    return faults[0] === undefined ? undefined : `a row that its schema refuses: ${faults[0].problem}`;
  },
);

const CONTROL = /\p{Cc}/u;
const bytesOfKeys = fc
  .array(
    fc.oneof(
      fc.uint8Array({ maxLength: 6 }),
      fc
        .constantFrom(
          '\x1b',
          '\x1b[',
          '\x1bO',
          '\x1b[200~',
          '\x1b[201~',
          '\x1b[1;5P',
          '\x1b[<0;1;1M',
          '\x1b]52;c;',
          '\x1bP',
          '\r',
          '\n',
          '\t',
          '\x7f',
          'a',
          'é',
          '🪨',
        )
        .map((text) => new TextEncoder().encode(text)),
      fc.constantFrom(...HOSTILE).map((text) => new TextEncoder().encode(text)),
    ),
    { maxLength: 12 },
  )
  .map((parts) => new Uint8Array(Buffer.concat(parts)));

/** Bytes that come from a terminal. */
export const keys = target('bytes of keys', fc.tuple(bytesOfKeys, fc.nat(40)), ([bytes, cut]) => {
  const whole = decode(nothingHeld, bytes);
  const first = decode(nothingHeld, bytes.subarray(0, cut));
  const second = decode(first.state, bytes.subarray(cut));
  const events = [...whole.events, ...flush(whole.state).events];
  const parted = [...first.events, ...second.events, ...flush(second.state).events];
  if (JSON.stringify(events) !== JSON.stringify(parted))
    return `read in two parts it is ${JSON.stringify(parted)}`;
  const odd = events.find((event) =>
    event.kind === 'text' ? CONTROL.test(event.text) : event.kind === 'key' && !known(event.name),
  );
  return odd === undefined ? undefined : `no key: ${JSON.stringify(odd)}`;
});

const known = (name: string): boolean =>
  (namedKeys as readonly string[]).includes(name) || [...name].length === 1;
