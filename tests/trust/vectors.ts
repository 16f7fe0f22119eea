/** Texts that a terminal would obey or an eye would not see: by name, each with a mark in it that nothing of ours has. */
export const HOSTILE_TEXTS: Readonly<Record<string, string>> = {
  'colour by CSI': '\x1b[38;5;201mpink',
  'cursor by CSI': '\x1b[7;77Hthere',
  'erase the screen': '\x1b[2J\x1b[3Jgone',
  'erase the line': 'kept\x1b[2Kgone',
  'scroll region': '\x1b[5;6rscroll',
  'another screen': '\x1b[?47hscreen',
  'leave our screen': '\x1b[?1049lout',
  'hide the cursor': '\x1b[?25lno cursor',
  'mouse reports': '\x1b[?1003hmouse',
  'bracketed paste off': '\x1b[?2004lpaste',
  'status report': '\x1b[6nanswer me',
  'attributes report': '\x1b[cwho',
  'secondary attributes': '\x1b[>cwho',
  'terminal name': '\x1b[>qname',
  'clipboard by OSC 52': '\x1b]52;c;cm0gLXJmIH4=\x07clip',
  'clipboard, string terminator': '\x1b]52;c;?\x1b\\clip',
  'title by OSC 0': '\x1b]0;owned\x07title',
  'title by OSC 2': '\x1b]2;owned\x1b\\title',
  'icon by OSC 1': '\x1b]1;owned\x07icon',
  'link by OSC 8': '\x1b]8;;https://example.invalid\x1b\\link\x1b]8;;\x1b\\',
  'folder by OSC 7': '\x1b]7;file:///etc\x07folder',
  'palette by OSC 4': '\x1b]4;1;rgb:00/00/00\x07ink',
  'background by OSC 11': '\x1b]11;?\x07ground',
  'notification by OSC 9': '\x1b]9;call me\x07note',
  'notification by OSC 777': '\x1b]777;notify;a;b\x07note',
  'image by OSC 1337': '\x1b]1337;File=inline=1:AAAA\x07image',
  'device control': '\x1bP+q544e\x1b\\device',
  'settings request': '\x1bP$qm\x1b\\settings',
  'application command': '\x1b_Gf=32;AAAA\x1b\\picture',
  'privacy message': '\x1b^hidden\x1b\\message',
  'reset the terminal': '\x1bcreset',
  'line drawing letters': '\x1b(0qqq',
  'shift out': 'a\x0eqqq\x0fb',
  'C1 CSI': '\u009b31mred',
  'C1 OSC': '\u009d0;owned\u009ctitle',
  'C1 DCS': '\u0090q\u009cdevice',
  'C1 next line': 'one\u0085two',
  bell: 'ring\x07ring',
  backspace: 'safe\b\b\b\bevil',
  delete: 'safe\x7f\x7fevil',
  'carriage return': 'unsafe\rsafe',
  'line feed': 'one\ntwo',
  'form feed': 'one\ftwo',
  'vertical tab': 'one\vtwo',
  tab: 'one\ttwo',
  null: 'one\0two',
  'right-to-left override': 'abc\u202etxt.exe',
  'left-to-right override': 'abc\u202dtxt',
  'embedding left open': 'abc\u202bdef',
  'isolate left open': 'abc\u2067def',
  'pop without a push': 'abc\u202c\u2069def',
  'right-to-left mark': 'abc\u200fdef',
  'arabic letter mark': 'abc\u061cdef',
  'zero-width space': 'py\u200brite',
  'zero-width joiner': 'py\u200drite',
  'word joiner': 'py\u2060rite',
  'byte order mark within': 'py\ufeffrite',
  'soft hyphen': 'py\u00adrite',
  'line separator': 'one\u2028two',
  'paragraph separator': 'one\u2029two',
  'language tag': 'abc\u{e0041}\u{e007f}',
  'variation selector': 'rock\ufe0f\u{e0100}',
  'hangul filler': 'a\u3164\u115fb',
  'combining heap': `a${'\u0301'.repeat(40)}b`,
  'wide letters': '輝石'.repeat(30),
  'emoji family': '👩\u200d👩\u200d👧'.repeat(9),
  'one long word': 'x'.repeat(1900),
};

/** The same in a list. */
export const HOSTILE = Object.values(HOSTILE_TEXTS);

/** Sequences that the painter sends of its own: colours, the cursor to a place, erasing, one update at a time. */
const OURS = /\x1b\[[\d;]*m|\x1b\[\d+;\d+H|\x1b\[K|\x1b\[2J|\x1b\[\?2026[hl]/g;

/** What else a terminal would obey or hide: controls, format characters, separators, lone surrogates, and what is ignorable by default. */
const OBEYED = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Default_Ignorable_Code_Point}]/u;

/** Sequences of the vectors that look like those of the painter and are never sent by it. */
const MARKS = ['\x1b[38;5;201m', '\x1b[7;77H', '\x1b[3J'];

/** What reaches the terminal and should not, around its place; undefined where all of it is ours. */
export function obeyed(bytes: string): string | undefined {
  const mark = MARKS.find((each) => bytes.includes(each));
  if (mark !== undefined) return JSON.stringify(mark);
  const text = bytes.replace(OURS, '');
  const at = text.search(OBEYED);
  return at < 0 ? undefined : JSON.stringify(text.slice(Math.max(0, at - 30), at + 30));
}

/** The same for text on lines, as a command prints it. */
export function obeyedInLines(text: string): string | undefined {
  return obeyed(text.replaceAll('\n', ' '));
}
