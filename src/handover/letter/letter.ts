import { allFindingKinds } from '../../check/registry.ts';
import type { Finding, Severity } from '../../finding/finding.ts';
import { formatPlace } from '../../finding/place.ts';
import { safeText } from '../../finding/safe-text.ts';
import { WHAT_IT_IS_NOT } from '../../finding/what-it-is-not.ts';
import { headerOf, holeNouns } from '../../hole/hole.ts';
import type { Project } from '../../project/project.ts';
import { formatInterval } from '../../quantity/interval.ts';
import { localDate, localTime, type Stamp } from '../../quantity/stamp.ts';
import type { Document } from '../../record/document.ts';
import { stockOf } from '../../sampling/scheme/stock.ts';
import { dangerLines } from '../../standing/dangers.ts';
import { type ProvisionalCode, provisionalCodes } from '../../standing/provisional-codes.ts';
import { type Unfinished, unfinished } from '../../standing/unfinished.ts';
import { askedAndCalled } from '../../termination/findings.ts';
import type { Bundle } from '../bundle/make-bundle.ts';
import { bagSentence, holeSentence } from './holes.ts';

/** What a letter to camp is written from. */
export interface LetterAbout {
  readonly project: Project;
  /** Every document of the project: stock and codes are counted over all of them. */
  readonly documents: readonly Document[];
  /** Documents that were to go: those that camp has as they are among them. */
  readonly chosen?: readonly Document[];
  /** Documents in the bundle. */
  readonly packed: readonly Document[];
  /** What the check finds on the holes in the bundle. */
  readonly findings: readonly Finding[];
  readonly bundle: Bundle;
  /** What was to be in it and is not. */
  readonly notPacked?: readonly Unfinished[];
  /** Where it holds only what is new or changed: who acknowledged what they hold, and documents left out for that. */
  readonly since?: {
    readonly receivers: readonly { readonly by: string; readonly at: string }[];
    readonly unchanged: number;
  };
}

/** A letter: its subject, and its text in lines of plain words. */
export interface Letter {
  readonly subject: string;
  readonly text: string;
}

/** Characters of a line of the text, and of the subject; what is longer is cut. */
const LONGEST_LINE = 500;
const LONGEST_SUBJECT = 150;

/**
 * The letter that goes with a bundle: holes with their states and depths, what is not finished, what the check finds, codes that wait for
 * camp, controls and bags, and the bundle with its SHA-256. Nothing that a file says starts a line of its own or hides in one.
 */
export function letterFor(about: LetterAbout): Letter {
  const { bundle, project } = about;
  const { at } = bundle;
  const { by } = bundle.manifest;
  const name = project.settings.people.find((person) => person.initials === by)?.name;
  const who = name === undefined ? by : `${name} (${by})`;
  const sections: readonly (readonly [heading: string, lines: readonly string[]])[] = [
    [`${project.settings.name}: packed on ${localDate(at)} at ${localTime(at)} by ${who}.`, []],
    [
      'Dangers met',
      dangerLines(
        project.schema,
        (about.chosen ?? about.packed).filter((each) => each.kind === 'hole'),
      ),
    ],
    ['Holes', about.packed.filter((each) => each.kind === 'hole').map(holeSentence)],
    ['Not finished', unfinishedLines(about)],
    ['What the check finds in these holes', findingLines(about.findings)],
    ['Codes that wait for camp', codeLines(about)],
    ['Bags', bagLines(about)],
    ['Controls in stock', stockLines(about)],
    ['The bundle', [...sinceLines(about), ...bundleLines(bundle)]],
    ['What offsider is not', [WHAT_IT_IS_NOT]],
  ];
  const text = sections
    .filter(([, lines], index) => index === 0 || lines.length > 0)
    .map(([heading, lines]) =>
      [heading, ...lines.map((line) => `  ${line}`)].map((line) => oneLine(line, LONGEST_LINE)).join('\n'),
    )
    .join('\n\n');
  const subject = `${project.settings.name}: ${holesInWords(about.packed)}, ${localDate(at)}, from ${who}`;
  return { subject: oneLine(subject, LONGEST_SUBJECT), text: `${text}\n` };
}

/** A text on one line, with nothing in it that hides or obeys; cut after so many characters. */
function oneLine(text: string, most: number): string {
  const shown = [...safeText(text)];
  return shown.length <= most ? shown.join('') : `${shown.slice(0, most).join('')} …`;
}

/** What a bundle leaves out, as its receivers have it. */
function sinceLines({ since }: LetterAbout): readonly string[] {
  if (since === undefined) return [];
  const who = since.receivers.map(
    ({ by, at }) => `${by} on ${localDate(at as Stamp)} at ${localTime(at as Stamp)}`,
  );
  return [
    `It holds what is new or changed since the copy of ${who.join(', and of ')}. ${since.unchanged} ${since.unchanged === 1 ? 'document is' : 'documents are'} left out: you have ${since.unchanged === 1 ? 'it as it is' : 'them as they are'}.`,
    'Where that copy was lost, ask for all of it: offsider pack --whole.',
  ];
}

function holesInWords(packed: readonly Document[]): string {
  if (packed.length === 0) return 'nothing new, an acknowledgement';
  const names = packed.filter((each) => each.kind === 'hole').map((hole) => headerOf(hole).name);
  const others = packed.length - names.length;
  if (names.length === 0) return `${others} documents`;
  return names.length <= 3
    ? names.join(', ')
    : `${names.slice(0, 2).join(', ')} and ${names.length - 2} more`;
}

function unfinishedLines(about: LetterAbout): readonly string[] {
  const { project, documents, packed, findings, bundle, notPacked = [] } = about;
  const open = [...notPacked, ...unfinished({ project, documents, now: bundle.at }, packed, findings)];
  if (open.length === 0) return ['Nothing in what is packed.'];
  return open.flatMap(({ name, items }) => items.map((item) => `${name}: ${item}`));
}

const GRAVEST_FIRST: readonly Severity[] = ['fault', 'warning', 'note'];

/** Findings by kind, the gravest first: how many, and what the kind says is wrong. */
function findingLines(findings: readonly Finding[]): readonly string[] {
  if (findings.length === 0) return ['Nothing.'];
  return GRAVEST_FIRST.flatMap((severity) => {
    const codes = findings.filter((each) => each.severity === severity).map((each) => each.code);
    return [...new Set(codes)].map((code) => {
      if (code === askedAndCalled.code) return calledLine(findings);
      const count = codes.filter((each) => each === code).length;
      const title = allFindingKinds.find((kind) => kind.code === code)?.title ?? code;
      return `${count} × ${severity}: ${title}`;
    });
  });
}

/** Who was called where the rules said to ask: that is no going against them, and it is said by name. */
function calledLine(findings: readonly Finding[]): string {
  const calls = findings
    .filter(({ code }) => code === askedAndCalled.code)
    .map(
      ({ place, problem }) => `${formatPlace(place)}: ${problem.replace(/^.*, and (.+) was called$/, '$1')}`,
    );
  return `${calls.length} × note: the advice was ask, and someone was called: ${calls.join('; ')}`;
}

function codeLines({ project, documents }: LetterAbout): readonly string[] {
  return provisionalCodes(project.schema, documents).map(codeSentence);
}

function codeSentence({ list, code, label, look, pair, uses }: ProvisionalCode): string {
  const typed = pair === undefined ? '' : `, typed ${pair}`;
  const looks = look === '' ? '' : `, looks: ${look}`;
  const where = uses.map(
    ({ hole, rows, first }) => `${hole} ${rows} ${rows === 1 ? 'row' : 'rows'} from ${formatInterval(first)}`,
  );
  return `${list}: ${code} ${label}${typed}${looks}; ${where.length === 0 ? 'no row uses it' : where.join(', ')}.`;
}

function bagLines({ project, packed }: LetterAbout): readonly string[] {
  return packed
    .filter((each) => each.kind === 'hole' && headerOf(each).state !== 'planned')
    .flatMap((hole) => bagSentence(project, hole) ?? []);
}

function stockLines({ project, documents }: LetterAbout): readonly string[] {
  const bags = documents.filter((each) => each.kind === 'hole').flatMap((hole) => holeNouns(hole, 'bags'));
  return stockOf(project.sampling, bags).map(
    ({ kind, material, left, came }) => `${kind} ${material}: ${left} of ${came} left.`,
  );
}

function bundleLines({ name, bytes, sha256, manifest }: Bundle): readonly string[] {
  return [
    `${name}.zip, ${bytes.length} bytes`,
    `SHA-256 ${sha256}`,
    ...manifest.files.map(({ file, bytes: size }) => `  ${file}, ${size} bytes`),
    `It is taken in with: offsider receive ${name}.zip`,
  ];
}
