import { parentsOf } from '../desk/load-project.ts';
import type { Outside } from '../desk/outside.ts';
import { realDisk } from '../files/real-disk.ts';
import type { Result } from '../finding/finding.ts';
import { type Dictionary, importDictionary } from '../schema/change/import-dictionary.ts';
import { frozenBy } from '../schema/change/stroke-slots.ts';
import { takeDictionary } from '../schema/change/take-dictionary.ts';
import { legendOf } from '../standing/hole-schema.ts';
import { atProject, type Shared } from './at-project.ts';
import { csvTextOf } from './csv-text.ts';
import { EXIT, refuse, say, sayAside, sayJson, sayTrouble } from './say.ts';

/** What `offsider schema dictionary` is given. */
export interface DictionaryAsked extends Shared {
  readonly file: string;
  readonly preview: boolean;
  readonly json: boolean;
}

/** The dictionary of a CSV file. */
export async function dictionaryOf(file: string): Promise<Result<Dictionary>> {
  const text = await csvTextOf(file);
  return text.ok ? importDictionary({ file, text: text.value }) : text;
}

/** Takes fields, lists and scales of a CSV into the project's logging.json. Gives 1 where the check finds a fault: then nothing is changed. */
export function takeDictionaryIn(outside: Outside, asked: DictionaryAsked): Promise<number> {
  return atProject(outside, { ...asked, write: !asked.preview }, async ({ desk }) => {
    const logging = desk.logging();
    if (logging === undefined) throw new Error('a project without logging.json was opened');
    const dictionary = await dictionaryOf(asked.file);
    const holes = [...desk.documents().values()].filter(({ kind }) => kind === 'hole');
    const loadParent = await parentsOf(realDisk, asked.folder, logging);
    const file = { file: logging.file, text: logging.text };
    const frozen = holes.flatMap((hole) => frozenBy(legendOf(hole)));
    const taken = dictionary.ok ? takeDictionary(file, dictionary.value, { loadParent, frozen }) : dictionary;
    if (!taken.ok || !dictionary.ok) {
      sayTrouble(outside, { findings: taken.ok ? [] : taken.findings });
      sayAside(outside, 'Nothing was changed.');
      return EXIT.findings;
    }
    if (!asked.preview) {
      const written = await desk.writeByHand('logging', taken.value.text);
      if (!written.ok) return refuse(outside, ...written.findings);
    }
    const { chosen } = taken.value;
    if (asked.json) sayJson(outside, { written: !asked.preview, chosen, ...dictionary.value });
    else say(outside, [...chosen.map(strokeLine), outcome(dictionary.value, asked.preview)].join('\n'));
    return EXIT.fine;
  });
}

function strokeLine({
  strokes,
  label,
  is,
}: {
  strokes: string | undefined;
  label: string;
  is: string;
}): string {
  return `${(strokes ?? '–').padEnd(3)} ${is === 'key' ? 'key, ' : ''}${label}`;
}

/** How much of what a dictionary holds. */
export function dictionaryWords({ fields, lists, scales }: Dictionary): string {
  const codes = Object.values(lists).reduce((sum, list) => sum + (list.codes?.length ?? 0), 0);
  const counted = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`;
  return [
    counted(fields.length, 'field'),
    `${counted(codes, 'code')} in ${counted(Object.keys(lists).length, 'list')}`,
    counted(Object.keys(scales).length, 'scale'),
  ].join(', ');
}

function outcome(dictionary: Dictionary, preview: boolean): string {
  const words = dictionaryWords(dictionary);
  return preview
    ? `${words}, with the pairs above, would go into logging.json. Nothing was changed.`
    : `In logging.json now: ${words}, with the pairs above. The former one is kept.`;
}
