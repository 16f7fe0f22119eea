import { parentsOf } from '../desk/load-project.ts';
import type { Outside } from '../desk/outside.ts';
import { realDisk } from '../files/real-disk.ts';
import { type CodeColumns, importCodes } from '../schema/change/import-codes.ts';
import { type ImportedLibrary, importLibrary } from '../schema/change/import-library.ts';
import { atProject, type Shared } from './at-project.ts';
import { csvTextOf } from './csv-text.ts';
import { EXIT, refuse, say, sayAside, sayJson, sayTrouble } from './say.ts';

/** What `offsider schema import` is given. */
export interface ImportAsked extends Shared {
  readonly list: string;
  readonly file: string;
  /** Headings of the CSV. */
  readonly columns: { readonly [Name in keyof CodeColumns]: string | undefined };
  /** A field that takes its codes from this list from then on. */
  readonly field?: string | undefined;
  /** Cautions that get lost were seen, and are to go. */
  readonly dropCautions?: boolean;
  readonly preview: boolean;
  readonly json: boolean;
}

/**
 * Takes a code library imposed from elsewhere into a list of logging.json: codes kept as they are, pairs proposed. Gives 1 where a line
 * can't be taken or the check finds a fault in what comes of it: then nothing is changed.
 */
export function importCodeLibrary(outside: Outside, asked: ImportAsked): Promise<number> {
  const { preview, json } = asked;
  return atProject(outside, { ...asked, write: !preview }, async ({ desk }) => {
    const logging = desk.logging();
    if (logging === undefined) throw new Error('a project without logging.json was opened');
    const text = await csvTextOf(asked.file);
    if (!text.ok) return refuse(outside, ...text.findings);
    const columns = Object.fromEntries(
      Object.entries(asked.columns).filter(([, heading]) => heading !== undefined),
    ) as CodeColumns;
    const codes = importCodes({ file: asked.file, text: text.value }, columns);
    const parents = await parentsOf(realDisk, asked.folder, logging);
    const file = { file: logging.file, text: logging.text };
    const library = codes.ok ? importLibrary(file, asked, codes.value, parents) : codes;
    if (!library.ok) {
      sayTrouble(outside, library);
      sayAside(outside, 'Nothing was changed.');
      return EXIT.findings;
    }
    if (!preview) {
      const written = await desk.writeByHand('logging', library.value.text);
      if (!written.ok) return refuse(outside, ...written.findings);
    }
    const { proposed, withoutPair, replaced, unwarned } = library.value;
    if (json)
      sayJson(outside, { list: asked.list, written: !preview, proposed, withoutPair, replaced, unwarned });
    else say(outside, importText(library.value, asked));
    return EXIT.fine;
  });
}

function importText(
  { schema, proposed, withoutPair, replaced, unwarned }: ImportedLibrary,
  { list, preview }: ImportAsked,
): string {
  const labels = new Map(schema.lists[list]?.codes.map(({ code, label }) => [code, label]));
  return [
    ...proposed.map(({ code, pair }) => `${pair}  ${code}  ${labels.get(code) ?? ''}`),
    ...(withoutPair.length === 0
      ? []
      : [
          `No safe pair is left for ${withoutPair.join(', ')}: type them with the field, like rock'${withoutPair[0]}.`,
        ]),
    ...(replaced.length === 0
      ? []
      : [
          `LOOK: the list had ${replaced.join(', ')} already: their words are now those of the file. Rows that are logged keep the code.`,
        ]),
    ...unwarned.map((each) => `LOOK: ${each}. Name a column with --caution, or put it into logging.json.`),
    preview
      ? `The list ${list} would have ${labels.size} codes, with the pairs above proposed. Nothing was changed.`
      : `The list ${list} has ${labels.size} codes, with the pairs above proposed. The former logging.json is kept.`,
  ].join('\n');
}
