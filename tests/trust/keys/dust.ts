import { documentKey, type Entry } from '../../../src/record/document.ts';
import { type Sitting, sampleFiles, sitDown } from '../../console/support/sitting.ts';

/** What a run of keys that mean nothing came to. */
export interface Dust {
  readonly keys: number;
  /** Edits that were made, by what was done with its numbers and names masked, and how often. */
  readonly edits: ReadonlyMap<string, number>;
  /** Screens and questions that were reached, by name. */
  readonly reached: ReadonlySet<string>;
  /** Processor time of the slowest key with its screen: what else the machine does counts for nothing. */
  readonly slowestMs: number;
}

const CHARACTERS = [..."abcdefghijklmnopqrstuvwxyz0123456789.,;'=/ -"];
const NAMED = [
  ...['enter', 'enter', 'enter', 'tab', 'backspace', 'delete', 'escape', 'up', 'down', 'left', 'right'],
  ...['home', 'end', 'page-up', 'page-down'],
  ...Array.from({ length: 12 }, (_, index) => `f${index + 1}`),
];
const CONTROLS = [...'abcdefghijklmnopqrstuvwxyz'].map((letter) => `ctrl-${letter}`);
/** Columns and rows of a window: none, a line, the smallest that shows anything and its neighbours, wide ones. */
const COLUMNS = [1, 2, 3, 7, 20, 40, 79, 80, 80, 81, 100, 100, 132, 250];
const ROWS = [1, 2, 3, 6, 12, 23, 24, 24, 25, 30, 30, 45, 90];
const KEYS_A_SITTING = 3000;

/**
 * Presses keys by chance, as grit under a keyboard or a sleeve does, in a window whose size changes, and looks at the screen after each: it must
 * be there, in its size and in time. Gives which edits were made by it. Throws at the first screen that is not as it must be.
 */
export async function dust(keys: number, random: () => number): Promise<Dust> {
  const edits = new Map<string, number>();
  const reached = new Set<string>();
  let slowestMs = 0;
  for (let pressed = 0; pressed < keys; pressed += KEYS_A_SITTING) {
    const sitting = await sitDown(sampleFiles());
    const before = lengths(sitting);
    let [columns, rows] = [100, 30];
    for (let key = pressed; key < Math.min(keys, pressed + KEYS_A_SITTING); key += 1) {
      const began = process.cpuUsage();
      // Not for long in one in which nothing is shown: keys do nothing there.
      if (random() < (columns < 80 || rows < 24 ? 0.3 : 0.02)) {
        [columns, rows] = [pick(COLUMNS, random), pick(ROWS, random)];
        sitting.resize(columns, rows);
      }
      const name = press(sitting, random);
      const screen = sitting.screen();
      const { user, system } = process.cpuUsage(began);
      slowestMs = Math.max(slowestMs, (user + system) / 1000);
      if (screen.length !== rows - 1) throw new Error(`${screen.length} lines of ${rows - 1} after ${name}`);
      const { state } = sitting;
      reached.add([state().screen.name, state().prompt?.kind ?? ''].join(' '));
    }
    for (const [what, count] of editsSince(sitting, before)) edits.set(what, (edits.get(what) ?? 0) + count);
    await sitting.desk.close({ abandon: true });
  }
  return { keys, edits, reached, slowestMs };
}

const pick = <T>(from: readonly T[], random: () => number): T =>
  from[Math.floor(random() * from.length)] as T;

function press(sitting: Sitting, random: () => number): string {
  const chance = random();
  if (chance < 0.03) {
    const text = Array.from({ length: 8 }, () => pick(CHARACTERS, random)).join('');
    sitting.burst(`${text}\r`);
    return text;
  }
  const name = pick(chance < 0.5 ? CHARACTERS : chance < 0.93 ? NAMED : CONTROLS, random);
  if (name.length === 1) sitting.type(name);
  else sitting.press(name);
  return name;
}

function lengths({ state }: Sitting): ReadonlyMap<string, number> {
  return new Map([...state().documents].map(([key, { history }]) => [key, history.length]));
}

function editsSince({ state }: Sitting, before: ReadonlyMap<string, number>): ReadonlyMap<string, number> {
  const made = new Map<string, number>();
  for (const document of state().documents.values())
    for (const entry of document.history.slice(before.get(documentKey(document)) ?? 0)) {
      const what = masked(entry);
      made.set(what, (made.get(what) ?? 0) + 1);
    }
  return made;
}

/** What an edit did, with what is different each time taken out: the tables it touched and its first words. */
function masked({ what, changes }: Entry): string {
  const verbs = changes.map((change) => {
    const verb = 'put' in change ? 'put' : 'patch' in change ? 'patch' : 'remove';
    const [table] = 'put' in change ? change.put : 'patch' in change ? change.patch : change.remove;
    return `${verb} ${table}`;
  });
  const words = what.replaceAll(/[A-Z]{2,}\d+|\d+([.–]\d+)*/g, '#').slice(0, 40);
  return `${words}  (${[...new Set(verbs)].sort().join(', ')})`;
}

/** The edits as lines, the most frequent first. */
export function dustLines({ keys, edits }: Dust): readonly string[] {
  return [...edits]
    .sort(([, a], [, b]) => b - a)
    .map(([what, count]) => `${String(count).padStart(6)} of ${keys} keys: ${what}`);
}
