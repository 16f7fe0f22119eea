import { documentFault } from '../../src/files/document-file.ts';
import { projectSettings } from '../../src/project/settings.ts';
import type { Document } from '../../src/record/document.ts';
import type { Files } from '../console/support/sitting.ts';
import { HOSTILE } from './vectors.ts';

/** Texts that other texts hang on, by the name of their member: changed, the file says something else and not something hostile. */
const REFERENCES = new Set([
  'rig',
  'hole',
  'activity',
  'rod',
  'run',
  'list',
  'scale',
  'field',
  'of',
  'plod',
  'code',
  'extends',
]);

/** What project.json holds beside words: bag numbers, who signs. */
const NUMBERS = new Set(['first', 'last', 'initials', 'proj']);

/** Calls for each text in a value with the way to put another in its place; in the order of the file. */
function eachText(
  value: unknown,
  see: (put: (text: string) => void, back: () => void, name: string) => void,
): void {
  if (typeof value !== 'object' || value === null) return;
  const held = value as Record<string, unknown>;
  for (const [name, member] of Object.entries(held)) {
    if (typeof member !== 'string') eachText(member, see);
    else
      see(
        (text) => {
          held[name] = text;
        },
        () => {
          held[name] = member;
        },
        name,
      );
  }
}

/** A hole or shift of which every text that may be any text is a hostile one; how many were put in. */
export function hostileDocument(
  text: string,
  first: number,
): { readonly text: string; readonly put: number } {
  const file = JSON.parse(text) as Document & { tables: Record<string, Record<string, unknown>> };
  let put = 0;
  for (const [table, things] of Object.entries(file.tables)) {
    for (const id of Object.keys(things)) {
      eachText({ [id]: things[id] }, (change, back, name) => {
        if (REFERENCES.has(name)) return;
        change(HOSTILE[(first + put) % HOSTILE.length] ?? '');
        if (documentFault(file, [[table, id]]) === undefined) put += 1;
        else back();
      });
    }
  }
  return { text: JSON.stringify(file), put };
}

/** The settings of a project of which every text that may be any text is a hostile one. */
function hostileSettings(text: string, first: number): { readonly text: string; readonly put: number } {
  const settings = JSON.parse(text) as { rigs: unknown; people: { initials: string }[] };
  const { rigs } = settings;
  let put = 0;
  eachText(settings, (change, back, name) => {
    if (REFERENCES.has(name) || NUMBERS.has(name)) return;
    change(HOSTILE[(first + put) % HOSTILE.length] ?? '');
    if (projectSettings.safeParse(settings).success) put += 1;
    else back();
  });
  return { text: JSON.stringify({ ...settings, rigs }), put };
}

/** A logging schema with hostile words wherever words may stand: labels, looks, cautions, what is seldom. */
function hostileLogging(first: number): string {
  const words = (index: number): string => HOSTILE[(first + index) % HOSTILE.length] ?? '';
  return JSON.stringify({
    format: 1,
    name: 'logging',
    extends: 'orogenic-gold',
    fields: [
      { name: 'rock', label: `rock${words(0)}`.slice(0, 40) },
      { name: 'veins', label: `veins${words(1)}`.slice(0, 40) },
    ],
    lists: {
      rocks: {
        label: words(2).slice(0, 60),
        codes: [
          { code: 'BAS', label: `basalt${words(3)}`.slice(0, 60), look: words(4).slice(0, 200) },
          {
            code: 'SHA',
            label: `shale${words(5)}`.slice(0, 60),
            caution: { kind: 'void', words: words(6).slice(0, 200) },
          },
        ],
      },
    },
  });
}

/** A project in which every text is hostile, as files. */
export function hostileProject(
  sample: Files,
  first: number,
): { readonly files: Files; readonly put: number } {
  let put = 0;
  const files = Object.fromEntries(
    Object.entries(sample).map(([path, text]): readonly [string, string] => {
      if (path === 'logging.json') return [path, hostileLogging(first)];
      if (!path.endsWith('.json') || path.startsWith('schemas/')) return [path, text];
      const made = path === 'project.json' ? hostileSettings(text, first) : hostileDocument(text, first);
      put += made.put;
      return [path, made.text];
    }),
  );
  return { files, put };
}
