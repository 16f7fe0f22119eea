import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type DecoderState,
  decode,
  flush,
  nothingHeld,
  waitFor,
} from '../../../../src/console/terminal/input/decode.ts';
import { chordOf, type KeyEvent, namedKeys } from '../../../../src/console/terminal/input/keys.ts';
import { pasteLimit } from '../../../../src/console/terminal/input/paste.ts';
import { parameterLimit } from '../../../../src/console/terminal/input/steps.ts';
import { runs } from '../../../support/long-run.ts';

const encoder = new TextEncoder();

/** Events of reads that follow each other without a pause, and those that a pause at the end adds. */
function read(...reads: readonly (string | Uint8Array)[]): readonly KeyEvent[] {
  let state: DecoderState = nothingHeld;
  const events: KeyEvent[] = [];
  for (const bytes of reads) {
    const decoded = decode(state, typeof bytes === 'string' ? encoder.encode(bytes) : bytes);
    events.push(...decoded.events);
    state = decoded.state;
  }
  return [...events, ...flush(state).events];
}

/** Events in short: a character as itself, a key press as its chord in angle brackets, a paste in guillemets. */
function short(...reads: readonly (string | Uint8Array)[]): string {
  return read(...reads)
    .map((event) => {
      if (event.kind === 'text') return event.text;
      return event.kind === 'paste' ? `«${event.text}»` : `<${chordOf(event)}>`;
    })
    .join('');
}

describe('typing', () => {
  it('a burst from a scanner gives its digits and then Enter, in order', () => {
    expect(short('12345678\r')).toBe('12345678<enter>');
  });
  it('each typed character is an event of its own', () => {
    expect(read('pé')).toEqual([
      { kind: 'text', text: 'p' },
      { kind: 'text', text: 'é' },
    ]);
  });
  it('CR, LF and CR LF are one Enter each, also when a read ends inside CR LF', () => {
    expect(short('a\rb\nc\r\nd')).toBe('a<enter>b<enter>c<enter>d');
    expect(short('a\r', '\nb')).toBe('a<enter>b');
    expect(short('\r\r\n\n')).toBe('<enter><enter><enter>');
  });
  it('an LF after a pause is an Enter of its own', () => {
    const held = flush(decode(nothingHeld, encoder.encode('\r')).state).state;
    expect(decode(held, encoder.encode('\n')).events).toHaveLength(1);
  });
  it('a character whose bytes come in different reads is whole', () => {
    const bytes = encoder.encode('°😀');
    expect(short(...Array.from(bytes, (byte) => Uint8Array.of(byte)))).toBe('°😀');
  });
  it('bytes that are not UTF-8 show as a replacement character, and the rest is read on', () => {
    expect(short(Uint8Array.of(0xff, 0x61))).toBe('\ufffda');
    expect(short(Uint8Array.of(0xc3, 0x61))).toBe('\ufffda');
    expect(short(Uint8Array.of(0xe0, 0x80, 0x80, 0x61))).toBe('\ufffda');
    expect(short(Uint8Array.of(0x61, 0xc3))).toBe('a\ufffd');
  });
  it('C1 controls type nothing', () => {
    expect(short('a\u009b\u0085b')).toBe('ab');
  });
});

describe('keys of their own', () => {
  const encodings: Readonly<Record<string, readonly string[]>> = {
    up: ['\x1b[A', '\x1bOA', '\x1b[1A', '\x1b[1;1A', '\x1b[57419u'],
    down: ['\x1b[B', '\x1bOB'],
    right: ['\x1b[C', '\x1bOC'],
    left: ['\x1b[D', '\x1bOD', '\x1b[57417u'],
    home: ['\x1b[H', '\x1bOH', '\x1b[1~', '\x1b[7~'],
    end: ['\x1b[F', '\x1bOF', '\x1b[4~', '\x1b[8~'],
    insert: ['\x1b[2~'],
    delete: ['\x1b[3~', '\x1b[57426u'],
    'page-up': ['\x1b[5~'],
    'page-down': ['\x1b[6~'],
    backspace: ['\x7f', '\b', '\x1b[127u'],
    tab: ['\t', '\x1b[9u', '\x1bOI'],
    'shift-tab': ['\x1b[Z', '\x1b[9;2u', '\x1b[27;2;9~'],
    enter: ['\r', '\n', '\x1bOM', '\x1b[13u', '\x1b[57414u'],
    'ctrl-enter': ['\x1b[13;5u', '\x1b[27;5;13~'],
    escape: ['\x1b', '\x1b[27u', '\x1b[27;1:1u'],
    f1: ['\x1bOP', '\x1b[11~', '\x1b[[A', '\x1b[P'],
    f2: ['\x1bOQ', '\x1b[12~', '\x1b[[B'],
    f3: ['\x1bOR', '\x1b[13~', '\x1b[[C'],
    f4: ['\x1bOS', '\x1b[14~', '\x1b[[D'],
    f5: ['\x1b[15~', '\x1b[[E'],
    f6: ['\x1b[17~'],
    f7: ['\x1b[18~'],
    f8: ['\x1b[19~'],
    f9: ['\x1b[20~'],
    f10: ['\x1b[21~'],
    f11: ['\x1b[23~'],
    f12: ['\x1b[24~'],
    'shift-f1': ['\x1b[1;2P', '\x1bO2P', '\x1b[25~', '\x1b[11;2~'],
    'ctrl-f1': ['\x1b[1;5P', '\x1bO5P', '\x1b[11^', '\x1b[11;5~'],
    'ctrl-shift-f5': ['\x1b[15;6~', '\x1b[15@'],
    'ctrl-up': ['\x1b[1;5A', '\x1bOa', '\x1bO5A'],
    'shift-up': ['\x1b[1;2A', '\x1b[a'],
    'alt-up': ['\x1b[1;3A', '\x1b\x1b[A', '\x1b\x1bOA'],
    'shift-delete': ['\x1b[3;2~', '\x1b[3$'],
    'alt-x': ['\x1bx', '\x1b[120;3u'],
    'alt-X': ['\x1bX'],
    'alt-é': ['\x1bé'],
    'alt-[': ['\x1b['],
    'alt-O': ['\x1bO'],
    'alt-]': ['\x1b]'],
    'alt-enter': ['\x1b\r', '\x1b[13;3u'],
    'alt-space': ['\x1b ', '\x1b[32;3u'],
    'alt-backspace': ['\x1b\x7f'],
    'ctrl-a': ['\x01', '\x1b[97;5u', '\x1b[27;5;97~', '\x1b[97;69u'],
    'ctrl-c': ['\x03'],
    'ctrl-z': ['\x1a'],
    'ctrl-space': ['\x00', '\x1b[32;5u'],
    'ctrl-\\': ['\x1c'],
    'ctrl-_': ['\x1f'],
  };
  for (const [chord, ways] of Object.entries(encodings))
    it(`${chord} is known in every encoding, and what follows it is not spoiled`, () => {
      for (const way of ways) {
        const opensMore = ['\x1b', '\x1b[', '\x1bO', '\x1b]', '\x1bX'].includes(way);
        expect(short(way), JSON.stringify(way)).toBe(`<${chord}>`);
        if (!opensMore) expect(short(`${way}a`), JSON.stringify(way)).toBe(`<${chord}>a`);
      }
    });
  it('every named key can arrive', () => {
    const arriving = new Set(
      Object.keys(encodings).map((chord) => chord.replace(/^(ctrl-|alt-|shift-)+/, '')),
    );
    expect(namedKeys.filter((name) => !arriving.has(name))).toEqual([]);
  });
  it('three backspaces in one read are three backspaces', () => {
    expect(short('\x7f\x7f\x7f')).toBe('<backspace><backspace><backspace>');
  });
  it('three arrows and Enter in one read are four keys', () => {
    expect(short('\x1b[A\x1b[A\x1b[B\r')).toBe('<up><up><down><enter>');
  });
  it('the keypad in application mode types its digits and signs', () => {
    expect(short('\x1bOp\x1bOy\x1bOn\x1bOl\x1bOm\x1bOk\x1bOj\x1bOo\x1bOX')).toBe('09.,-+*/=');
    expect(short('\x1b[57399u\x1b[57408u\x1b[57409u')).toBe('09.');
  });
  it('CSI u types plain and shifted characters, and says nothing when a key is let go', () => {
    expect(short('\x1b[97u\x1b[97;2u\x1b[97:65;2u\x1b[59:58;2u\x1b[97;1:3u')).toBe('aAA:');
  });
  it('a key held with the window-system key is not ours', () => {
    expect(short('\x1b[97;9u\x1b[1;9A')).toBe('');
  });
});

describe('Escape', () => {
  it('alone it waits 25 ms, then it is the Escape key', () => {
    const { events, state } = decode(nothingHeld, encoder.encode('\x1b'));
    expect(events).toEqual([]);
    expect(waitFor(state)).toBe(25);
    expect(flush(state)).toEqual({ events: [{ kind: 'key', name: 'escape' }], state: nothingHeld });
  });
  it('twice is two Escapes, three times is three', () => {
    expect(short('\x1b\x1b')).toBe('<escape><escape>');
    expect(short('\x1b\x1b\x1b')).toBe('<escape><escape><escape>');
  });
  it('twice and a character is Escape and Alt with the character', () => {
    expect(short('\x1b\x1bx')).toBe('<escape><alt-x>');
  });
  it('a sequence that is broken off by a new one is forgotten', () => {
    expect(short('\x1b[1;5\x1b[A')).toBe('<up>');
    expect(short('\x1b[1;5\ra')).toBe('<enter>a');
  });
  it('a sequence that is broken off by a pause is forgotten', () => {
    expect(short('\x1b[1;5')).toBe('');
    expect(short('\x1bO5')).toBe('');
  });
});

describe('what is no key', () => {
  const silent: Readonly<Record<string, string>> = {
    'focus in and out': '\x1b[I\x1b[O',
    'mouse reports (X10, SGR, urxvt)': '\x1b[M !!\x1b[<0;10;20M\x1b[<0;10;20m\x1b[32;10;20M',
    'a cursor position report': '\x1b[12;40R',
    'device attributes': '\x1b[?62;1;4c',
    'mode reports': '\x1b[?2026;2$y',
    'keyboard flags': '\x1b[?1u',
    'an unknown final character': '\x1b[1;2;3x\x1b[99~\x1bOZ',
    'operating system commands, ended by BEL or ST': '\x1b]11;rgb:0/0/0\x07\x1b]52;c;aGk=\x1b\\',
    'device control and application strings': '\x1bP1$r0m\x1b\\\x1b_Gi=1;OK\x1b\\',
  };
  for (const [what, bytes] of Object.entries(silent))
    it(`${what}: swallowed whole, never turned to text`, () => {
      expect(short(`${bytes}a`)).toBe('a');
    });
  it('a runaway sequence is swallowed to its end in bounded memory', () => {
    const { events, state } = decode(nothingHeld, encoder.encode(`\x1b[${'1;'.repeat(50_000)}`));
    expect(events).toEqual([]);
    expect(state).toMatchObject({ at: 'csi', parameters: '1;'.repeat(parameterLimit / 2) });
    expect(decode(state, encoder.encode('Aa')).events).toEqual([{ kind: 'text', text: 'a' }]);
  });
});

describe('a bracketed paste', () => {
  it('is one event, its line ends kept and nothing in it obeyed', () => {
    expect(short('\x1b[200~p3\r\nv2\x1b[A\x03\r\x1b[201~x')).toBe('«p3\nv2\x1b[A\x03\n»x');
  });
  it('is whole when its marks come in pieces', () => {
    expect(short('\x1b[20', '0~ab\x1b', '[20', '1', '~c')).toBe('«ab»c');
  });
  it('holds what only looks like the start of the end mark', () => {
    expect(short('\x1b[200~\x1b[20\x1b[201\x1b\x1b[201~')).toBe('«\x1b[20\x1b[201\x1b»');
  });
  it('over the limit is cut, says so, and its rest is swallowed', () => {
    const events = read(`\x1b[200~${'a'.repeat(pasteLimit + 5)}`, 'bbb\x1b[201~c');
    expect(events).toEqual([
      { kind: 'paste', text: 'a'.repeat(pasteLimit), cut: true },
      { kind: 'text', text: 'c' },
    ]);
  });
  it('whose end never comes is handed on as cut, after a longer wait than a lone Escape', () => {
    const { state } = decode(nothingHeld, encoder.encode('\x1b[200~ab'));
    expect(waitFor(state)).toBe(3000);
    expect(flush(state).events).toEqual([{ kind: 'paste', text: 'ab', cut: true }]);
  });
});

describe('laws', () => {
  /** Bytes thick with the beginnings of sequences. */
  const thick = fc
    .array(
      fc.oneof(
        fc.constantFrom(
          ...[
            '\x1b',
            '\x1b[',
            '\x1bO',
            '\x1b]',
            '\x1b[200~',
            '\x1b[201~',
            '\x1b\\',
            '[M',
            '\r',
            '\n',
            '1;5',
            '$',
            '~',
            'é',
            '😀',
          ],
        ),
        fc.string({ maxLength: 3 }),
        fc.uint8Array({ maxLength: 4 }),
      ),
      { maxLength: 30 },
    )
    .map((parts) =>
      Uint8Array.from(parts.flatMap((part) => [...(typeof part === 'string' ? encoder.encode(part) : part)])),
    );

  it('any split of any bytes decodes as the whole does', () => {
    fc.assert(
      fc.property(thick, fc.array(fc.nat(100), { maxLength: 6 }), (bytes, cuts) => {
        const places = [
          0,
          ...cuts.map((cut) => cut % (bytes.length + 1)).sort((a, b) => a - b),
          bytes.length,
        ];
        const parts = places.slice(1).map((place, index) => bytes.slice(places[index], place));
        expect(read(...parts)).toEqual(read(bytes));
      }),
      { numRuns: runs(2000) },
    );
  });
  it('any bytes at all decode, and a pause leaves nothing held', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        const { events, state } = decode(nothingHeld, bytes);
        const left = flush(state);
        expect(left.state).toBe(nothingHeld);
        for (const event of [...events, ...left.events])
          expect(event.kind === 'key' ? event.name : event.text).toBeTypeOf('string');
      }),
      { numRuns: runs(2000) },
    );
  });
  it('printable text comes back as it was typed', () => {
    const printable = fc
      .string({ unit: 'binary', maxLength: 40 })
      .filter((text) => !/[\p{Cc}\p{Cs}]/u.test(text));
    fc.assert(
      fc.property(printable, (text) => {
        expect(read(text)).toEqual([...text].map((character) => ({ kind: 'text', text: character })));
      }),
    );
  });
  it('no control character ever comes out as typed text', () => {
    fc.assert(
      fc.property(thick, (bytes) => {
        for (const event of read(bytes)) if (event.kind === 'text') expect(event.text).not.toMatch(/\p{Cc}/u);
      }),
      { numRuns: runs(1000) },
    );
  });
});
