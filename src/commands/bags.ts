import type { Outside } from '../desk/outside.ts';
import { ok, type Result, refused } from '../finding/finding.ts';
import { isOver } from '../hole/header.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import { parseDepth } from '../quantity/depth.ts';
import type { Document } from '../record/document.ts';
import { bagRunCsv, bagRunHtml } from '../sampling/numbers/bag-run.ts';
import { stockOf } from '../sampling/scheme/stock.ts';
import { bagRunOf } from '../standing/bag-run.ts';
import { bagsOnGround, streamAheadOf } from '../standing/stream.ts';
import { type AtProject, atProject, holeNamed, holesOf, type Shared } from './at-project.ts';
import { bagsText, issuedText } from './bags-text.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say, sayFile, sayJson } from './say.ts';

/** What `offsider bags` is given. */
export interface BagsAsked extends Shared {
  /** None: every hole that has numbered bags left. */
  readonly holes: readonly string[];
  /** Down to this depth in metres; the planned one if left out. */
  readonly to: string | undefined;
  readonly as: 'text' | 'issued' | 'csv' | 'html' | 'json';
}

/** The bags to label for tomorrow, ready to tick off: as text, labels in CSV, a sheet for the splitter in HTML; or the bags issued. */
export function bags(outside: Outside, asked: BagsAsked): Promise<number> {
  return atProject(outside, asked, async (at) => {
    const holes = holesAsked(at, asked.holes);
    if (!holes.ok) return refuse(outside, ...holes.findings);
    const toMm = asked.to === undefined ? undefined : parseDepth(asked.to);
    if (asked.to !== undefined && toMm === undefined) return refuse(outside, noDepth(asked.to));
    const facts = holes.value.map((hole) => bagFacts(at, hole, toMm));
    const lines = facts.flatMap((each) => each.run.lines);
    switch (asked.as) {
      case 'csv':
        sayFile(outside, bagRunCsv(lines));
        break;
      case 'html':
        sayFile(outside, bagRunHtml(lines, `Bags · ${facts.map((each) => each.run.hole).join(', ')}`));
        break;
      case 'json':
        sayJson(outside, { holes: facts, stock: stockAt(at) });
        break;
      case 'issued':
        say(outside, facts.map(issuedText).join('\n\n'));
        break;
      case 'text':
        say(outside, bagsText(facts, stockAt(at), leftOverAt(at)));
    }
    return EXIT.fine;
  });
}

function holesAsked(at: AtProject, names: readonly string[]): Result<readonly Document[]> {
  const named = names.map((name) => holeNamed(at, name));
  const unknown = named.flatMap((each) => (each.ok ? [] : each.findings));
  if (unknown.length > 0) return refused(...unknown);
  if (named.length > 0) return ok(named.flatMap((each) => (each.ok ? [each.value] : [])));
  return ok(
    holesOf(at.desk).filter((hole) => !isOver(headerOf(hole).state) && holeNouns(hole, 'bagRuns').length > 0),
  );
}

function bagFacts({ project }: AtProject, hole: Document, toMm: number | undefined) {
  return {
    run: bagRunOf(project, hole, toMm),
    issued: bagsOnGround(hole),
    putOff: holeNouns(hole, 'putOff').filter((put) => put.placedAt === undefined),
  };
}

/** Labels of holes that are over and that no bag used: `ABRC001: 23`. */
function leftOverAt({ desk, project }: AtProject): readonly string[] {
  return holesOf(desk)
    .filter((hole) => isOver(headerOf(hole).state))
    .map((hole) => ({ name: headerOf(hole).name, left: streamAheadOf(project, hole, 1).numberedLeft }))
    .filter(({ left }) => left > 0)
    .map(({ name, left }) => `${name}: ${left}`);
}

function stockAt({ desk, project }: AtProject) {
  return stockOf(
    project.sampling,
    holesOf(desk).flatMap((hole) => holeNouns(hole, 'bags')),
  );
}

const noDepth = (text: string) =>
  wrongUse.at(
    { thing: '--to' },
    { problem: `${text} is not a depth in metres`, remedy: 'Give one like 120 or 120.5.' },
  );
