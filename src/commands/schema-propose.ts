import { parentsOf } from '../desk/load-project.ts';
import type { Outside } from '../desk/outside.ts';
import { realDisk } from '../files/real-disk.ts';
import { type Finding, ok, type Result, refused } from '../finding/finding.ts';
import { guessOf } from '../schema/change/guessable.ts';
import { APART_AT_ANY_PRICE, type ProposedStroke, proposeStrokes } from '../schema/change/propose-strokes.ts';
import { frozenBy, type ProposeWhat } from '../schema/change/stroke-slots.ts';
import { withStrokes } from '../schema/change/with-strokes.ts';
import { writeStrokes } from '../schema/change/write-strokes.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import type { LoadParent } from '../schema/read/chain.ts';
import type { TextFile } from '../schema/read/places.ts';
import { resolveSchema } from '../schema/read/resolve.ts';
import { strokesOf } from '../schema/strokes.ts';
import { legendOf } from '../standing/hole-schema.ts';
import { atProject, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say, sayAside, sayJson, sayTrouble } from './say.ts';
import { namedSchemaFile, unknownNames } from './schema.ts';

/** What `offsider schema propose` is given. */
export interface ProposeAsked extends Shared {
  /** A file, or the name of a style; the project's logging.json where none is given. */
  readonly file?: string | undefined;
  /** Only these lists. */
  readonly lists?: readonly string[] | undefined;
  /** What has strokes gets better ones. */
  readonly again: boolean;
  readonly keys: boolean;
  /** No slip may read as something else, though the letters are harder to guess. */
  readonly apart?: boolean | undefined;
  /** Puts them into the project's logging.json. */
  readonly write: boolean;
  /** Prints the file with them in it instead of the list. */
  readonly print: boolean;
  readonly json: boolean;
}

/**
 * Proposes pairs (and keys) for a schema, each with why it is that one. Of a project the strokes that its holes were logged with stay.
 * Gives 1 where the file can't be read or would get a fault: then nothing is changed.
 */
export async function proposeForSchema(outside: Outside, asked: ProposeAsked): Promise<number> {
  if (asked.file !== undefined) {
    const problem = '--write is for the logging.json of a project';
    const remedy = 'Leave the file out, or print it: --print > new.json';
    if (asked.write) return refuse(outside, wrongUse.at({ file: asked.file }, { problem, remedy }));
    const unknown = await unknownNames(asked);
    if (unknown.length > 0) return refuse(outside, ...unknown);
    const named = await namedSchemaFile(asked.file);
    if (!named.ok) return refuse(outside, ...named.findings);
    return sayProposed(outside, asked, proposed(asked, named.value.file, named.value.loadParent, []));
  }
  return atProject(outside, { ...asked, write: asked.write }, async ({ desk }) => {
    const logging = desk.logging();
    if (logging === undefined) throw new Error('a project without logging.json was opened');
    const parents = await parentsOf(realDisk, asked.folder, logging);
    const holes = [...desk.documents().values()].filter(({ kind }) => kind === 'hole');
    const frozen = holes.flatMap((hole) => frozenBy(legendOf(hole)));
    const result = proposed(asked, { file: logging.file, text: logging.text }, parents, frozen);
    if (result.ok && asked.write && result.value.chosen.length > 0) {
      const written = await desk.writeByHand('logging', result.value.text);
      if (!written.ok) return refuse(outside, ...written.findings);
    }
    return sayProposed(outside, asked, result);
  });
}

/** What was chosen, the file with it, and how far the pairs of the whole schema can be guessed then. */
interface Proposed {
  readonly chosen: readonly ProposedStroke[];
  readonly text: string;
  readonly schema: LoggingSchema;
}

function proposed(
  { lists, again, keys, apart }: ProposeAsked,
  file: TextFile,
  loadParent: LoadParent,
  frozen: NonNullable<ProposeWhat['frozen']>,
): Result<Proposed> {
  const resolved = resolveSchema(file, loadParent);
  if (!resolved.ok) return resolved;
  const { schema } = resolved.value;
  const unknown = (lists ?? []).filter((list) => schema.lists[list] === undefined);
  if (unknown.length > 0) return refused(...unknown.map((list) => noList(file.file, list, schema)));
  const chosen = proposeStrokes(schema, {
    ...(lists === undefined ? {} : { lists }),
    ...(apart === true ? { apart: APART_AT_ANY_PRICE } : {}),
    again,
    keys,
    frozen,
  });
  const written = writeStrokes(file, chosen, loadParent);
  return written.ok ? ok({ chosen, text: written.value.text, schema: withStrokes(schema, chosen) }) : written;
}

function noList(file: string, list: string, { lists }: LoggingSchema): Finding {
  return wrongUse.at(
    { file, thing: `list ${list}` },
    { problem: `no list is called ${list}`, remedy: `Name one of: ${Object.keys(lists).join(', ')}.` },
  );
}

function sayProposed(outside: Outside, asked: ProposeAsked, result: Result<Proposed>): number {
  if (!result.ok) {
    sayTrouble(outside, result);
    sayAside(outside, 'Nothing was changed.');
    return EXIT.findings;
  }
  const { chosen, text, schema } = result.value;
  if (asked.print) say(outside, text.trimEnd());
  else if (asked.json) sayJson(outside, { written: asked.write, chosen });
  else say(outside, [...chosen.map(chosenLine), ...summary(schema, chosen, asked)].join('\n'));
  return EXIT.fine;
}

function chosenLine({ strokes, is, label, was, why }: ProposedStroke): string {
  const instead = was === undefined ? '' : `, instead of ${was}`;
  return `${(strokes ?? '–').padEnd(3)} ${is === 'key' ? 'key, ' : ''}${label}${instead}: ${why}`;
}

function summary(
  schema: LoggingSchema,
  chosen: readonly ProposedStroke[],
  { file, write }: ProposeAsked,
): readonly string[] {
  const pairs = strokesOf(schema)
    .filter(({ is, code }) => is === 'pair' && code?.retiredSince === undefined)
    .map(({ label, strokes }) => guessOf(label, strokes));
  const first = pairs.filter((pair) => pair.first).length;
  const inOrder = pairs.filter((pair) => pair.inOrder).length;
  const without = Object.values(schema.lists)
    .flatMap(({ codes }) => codes)
    .filter(({ pair, retiredSince }) => pair === undefined && retiredSince === undefined);
  return [
    ...(chosen.length === 0
      ? ['Nothing to propose: everything has strokes. --again looks for better ones.']
      : []),
    ...(without.length === 0
      ? []
      : [`No safe pair is left for ${without.map(({ code }) => code).join(', ')}: said by the field.`]),
    `Of ${pairs.length} pairs ${first} begin with the first letter of their term; of ${inOrder} both letters stand in it in order.`,
    write
      ? 'They are in logging.json; the former one is kept.'
      : file === undefined
        ? 'Nothing was changed: --write puts them into logging.json.'
        : 'Nothing was changed: --print shows the file with them.',
  ];
}
