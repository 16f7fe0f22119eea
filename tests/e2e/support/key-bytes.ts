/** What a terminal sends for the keys that type nothing (xterm, normal cursor keys). */
const keyBytes: Readonly<Record<string, string>> = {
  enter: '\r',
  tab: '\t',
  'shift-tab': '\x1b[Z',
  backspace: '\x7f',
  escape: '\x1b',
  up: '\x1b[A',
  down: '\x1b[B',
  right: '\x1b[C',
  left: '\x1b[D',
  home: '\x1b[H',
  end: '\x1b[F',
  insert: '\x1b[2~',
  delete: '\x1b[3~',
  'page-up': '\x1b[5~',
  'page-down': '\x1b[6~',
  f1: '\x1bOP',
  f2: '\x1bOQ',
  f3: '\x1bOR',
  f4: '\x1bOS',
  f5: '\x1b[15~',
  f6: '\x1b[17~',
  f7: '\x1b[18~',
  f8: '\x1b[19~',
  f9: '\x1b[20~',
  f10: '\x1b[21~',
  f11: '\x1b[23~',
  f12: '\x1b[24~',
};

/** The bytes of a key: named, `ctrl-` and a letter, or the text itself. */
export function bytesOf(key: string): string {
  const letter = /^ctrl-([a-z])$/.exec(key)?.[1];
  return letter === undefined ? (keyBytes[key] ?? key) : String.fromCharCode(letter.charCodeAt(0) - 96);
}
