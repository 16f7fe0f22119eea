import type { Finding } from '../finding/finding.ts';
import { formatPlace } from '../finding/place.ts';
import { type Accepted, acceptedIn, sealOf, signedOff } from '../hole/acceptance.ts';
import { ACCEPTANCE_FINDINGS } from '../hole/findings.ts';
import { headerOf } from '../hole/hole.ts';
import { type Document, documentKey } from '../record/document.ts';
import { hashJson } from '../record/hash.ts';

/** A finding of check with the document that it is of, and what was accepted of it. */
export interface Judged {
  readonly finding: Finding;
  /** What it is called in a list: letters and digits made of what it says, the same in every copy until it says something else. */
  readonly key: string;
  /** Hash of what it says in full. */
  readonly facts: string;
  /** The document that an acceptance of it is kept in; undefined where it is of no document (project.json, a file that can't be read). */
  readonly document?: Document;
  /** Who accepted it as it is. */
  readonly accepted?: Accepted;
  /** Who accepted what was found here before: it says something else now, so it is open again. */
  readonly before?: Accepted;
}

const RANKS = { fault: 0, warning: 1, note: 2 } as const;

/** Findings with what was accepted of them, the worst first; among equals in the order given. */
export function judgedAll(findings: readonly Finding[], documents: Iterable<Document>): readonly Judged[] {
  const all = [...documents];
  const facts = findings.map(factsOf);
  const length = keyLength(facts);
  const current = new Set(facts);
  const known = new Map(all.map((each) => [documentKey(each), acceptedIn(each).map(([, one]) => one)]));
  return findings
    .map((finding, index): Judged => {
      const hash = facts[index] as string;
      const document = documentOf(finding, all);
      const here = document === undefined ? [] : (known.get(documentKey(document)) ?? []);
      const accepted = here.findLast((each) => each.facts === hash);
      const place = formatPlace(finding.place);
      const before = here.findLast(
        (each) => each.code === finding.code && each.place === place && !current.has(each.facts),
      );
      return {
        finding,
        key: hash.slice(0, length),
        facts: hash,
        ...(document === undefined ? {} : { document }),
        ...(accepted !== undefined ? { accepted } : before === undefined ? {} : { before }),
      };
    })
    .toSorted((a, b) => RANKS[a.finding.severity] - RANKS[b.finding.severity]);
}

/** True of a finding that no one accepted and that is as bad as `from` or worse. */
export function isOpen({ finding, accepted }: Judged, from: Finding['severity'] = 'note'): boolean {
  return accepted === undefined && RANKS[finding.severity] <= RANKS[from];
}

/** Hash of what a finding says: of its kind, its place, what is wrong and what is there. Not of its remedy, which may be put in better words. */
function factsOf({ code, place, problem, excerpt }: Finding): string {
  return hashJson([code, formatPlace(place), problem, excerpt ?? null]);
}

/** How many first characters tell every hash from the others: four, or more. */
function keyLength(facts: readonly string[]): number {
  const distinct = [...new Set(facts)];
  for (let length = 4; length < 64; length += 1)
    if (new Set(distinct.map((each) => each.slice(0, length))).size === distinct.length) return length;
  return 64;
}

/** The document that a finding is of: that of its file, else the hole of its name. */
function documentOf({ place }: Finding, documents: readonly Document[]): Document | undefined {
  const [, kind, id] = /^(shift|dispatch|result)(?:e?s)\/(.+)\.json$/.exec(place.file ?? '') ?? [];
  const ofFile = documents.find((each) => (each.kind === kind || each.kind === `${kind}s`) && each.id === id);
  if (ofFile !== undefined || place.hole === undefined) return ofFile;
  return documents.find(
    (each) => each.kind === 'hole' && (headerOf(each).name === place.hole || each.id === place.hole),
  );
}

/** What was done to a hole since it was signed off, by this laptop or another, as a finding; none where it is as it was. */
export function changedSinceSignedOff(hole: Document): readonly Finding[] {
  const by = signedOff(hole);
  if (by === undefined || by.seal === undefined || sealOf(hole) === by.seal) return [];
  const signed = hole.history.findLastIndex((entry) =>
    entry.changes.some((change) => 'put' in change && change.put[0] === 'signOffs'),
  );
  const since = hole.history.slice(signed + 1);
  const what = since.slice(-MOST_NAMED).map((entry) => `${entry.by}: ${entry.what}`);
  const more = since.length > MOST_NAMED ? `${since.length - MOST_NAMED} before; ` : '';
  return [
    ACCEPTANCE_FINDINGS.changedSince.at(
      { hole: headerOf(hole).name },
      {
        problem: `it was signed off by ${by.by} on ${by.at.slice(0, 10)} and is not as it was then`,
        ...(what.length === 0 ? {} : { excerpt: `${more}${what.join('; ')}` }),
        remedy: 'Look at what came since. Open it again with the reason, mend it, and sign it off again.',
      },
    ),
  ];
}

const MOST_NAMED = 3;
