import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { USUAL_CAUTIONS } from '../../src/project/cautions.ts';
import { NEAR_SPLITTER } from '../../src/sampling/rod/mismatch.ts';
import { MISMATCHES } from '../../src/sampling/rod/mismatches/registry.ts';
import { sampleFiles, sitDown } from '../console/support/sitting.ts';

const SRC = join(import.meta.dirname, '../../src');

/** A text of the program that a person could read, and where it is; what is filled in is written as …. */
interface Text {
  readonly at: string;
  readonly words: string;
}

/** Every string of the source, joined where it is put together with +. */
const TEXTS: readonly Text[] = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((path) => /\.tsx?$/.test(path))
  .flatMap(textsOf);

function textsOf(path: string): readonly Text[] {
  const source = ts.createSourceFile(
    path,
    readFileSync(join(SRC, path), 'utf8'),
    ts.ScriptTarget.Latest,
    false,
  );
  const texts: Text[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    const words = wordsOf(source, node);
    if (words !== undefined) texts.push({ at: `${path}:${lineOf(source, node)}`, words });
    else ts.forEachChild(node, visit);
  };
  visit(source);
  return texts;
}

function lineOf(source: ts.SourceFile, node: ts.Node): number {
  return source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1;
}

/** A string or a template; several joined with + are one text. Undefined for anything else. */
function wordsOf(source: ts.SourceFile, node: ts.Node): string | undefined {
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return node.text;
  if (ts.isTemplateExpression(node)) {
    const spans = node.templateSpans.map((span) => `${filled(source, span.expression)}${span.literal.text}`);
    return `${node.head.text}${spans.join('')}`;
  }
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken) {
    const [left, right] = [wordsOf(source, node.left), wordsOf(source, node.right)];
    return left === undefined || right === undefined ? undefined : `${left}${right}`;
  }
  return undefined;
}

function filled(source: ts.SourceFile, expression: ts.Expression): string {
  return expression.getText(source) === 'NEAR_SPLITTER' ? NEAR_SPLITTER : '…';
}

/** Sentences of a text, and parts of one behind a semicolon or a colon: an order can begin at any of them. */
function partsOf(words: string): readonly string[] {
  return words
    .split(/(?<=[.!?])\s+|[;:,]\s+/)
    .map((each) => each.trim())
    .filter((each) => each.split(' ').length > 2);
}

/** What only the driller and the crew do: a text that asks for it begins "Ask the driller to". */
const CREW_WORK =
  /^(?:then |and |or )?(?:run (?:(?:the|a) (?:tool|gyro)|it again)|align (?:it|the)|re-?run|survey (?:again|this|the hole)|(?:take|record) (?:a|one|the \w+) shot again|take (?:a|one) (?:shot|at the next rod)|turn the mast|set the (?:mast|rig)|stop the rig|move the rig|(?:raise|lower|pull|blow) the (?!target)|drill on|count the rods|measure the bit|change the bit|clean the (?:cyclone|splitter)|level the splitter)\b/i;

/** An order to do something with one's own hands or eyes. */
const ORDER =
  /^(?:then |and |or )?(?:look|find|go|check|read|clean|level|set|open|measure|take|put|hang|step|stand|walk|hold|feel|touch|lift|move|lay)\b/i;

/** What no one goes to without the driller. */
const AT_THE_RIG = /\b(?:mast|rods|bit|splitter|cyclone|chute|drill string|rotation head|hoses?)\b/i;

/** Words that leave it to the driller, or keep the reader off. */
const UNDER_THE_DRILLER =
  /ask the driller to|only (?:once|when) the driller|unless the driller|takes? (?:you|them) in|until the driller|outside (?:the )?exclusion|from the rig|stay|keep (?:clear|away|off)/i;

/** What is done about a mismatch at the splitter is never shown without the condition before it. */
const SAID_UNDER_CONDITION = new Set(
  MISMATCHES.filter((each) => each.nearSplitter).map((each) => each.ground),
);

describe('no text of the program', () => {
  test('is read past: the walk finds the texts that people read', () => {
    expect(TEXTS.length).toBeGreaterThan(5_000);
    expect(TEXTS.some(({ words }) => words.startsWith('Ask the driller to run the tool again'))).toBe(true);
  });

  test('orders what the crew does: whatever needs the driller begins "Ask the driller to"', () => {
    const orders = TEXTS.filter(({ words }) => partsOf(words).some((part) => CREW_WORK.test(part)));
    expect(orders).toEqual([]);
  });

  test('sends anybody to the mast, the rods, the splitter or the cyclone but under the driller’s word', () => {
    const sent = TEXTS.filter(
      ({ words }) =>
        !UNDER_THE_DRILLER.test(words) &&
        !SAID_UNDER_CONDITION.has(words) &&
        partsOf(words).some((part) => ORDER.test(part) && AT_THE_RIG.test(part)),
    );
    expect(sent).toEqual([]);
  });

  test('speaks of hands at the splitter or the cyclone without its condition', () => {
    expect(NEAR_SPLITTER).toMatch(
      /driller confirms.*rotation is stopped.*air is off and bled.*isolation is done/,
    );
    for (const { words } of TEXTS.filter(({ words }) => /near the (?:cyclone|splitter)/i.test(words)))
      expect(words).toContain(NEAR_SPLITTER);
  });
});

test('a mismatch that can leave a calico on or under the splitter says the condition before anybody looks', () => {
  const looking = MISMATCHES.filter(({ ground }) =>
    /empty calico|left out|Open the bag|chute|splitter|sachet/.test(ground),
  );
  expect(looking.length).toBeGreaterThan(5);
  expect(looking.filter(({ nearSplitter }) => !nearSplitter).map(({ code }) => code)).toEqual([]);
});

describe('the usual cautions', () => {
  test.each([
    ['hose whip', /hoses whip/i],
    ['blockages under pressure', /blockage holds pressure/i],
    ['rod handling', /rods swing and drop/i],
    ['heavy bags', /30 to 40 kg/],
    ['dust', /silica and fibre/i],
    ['noise', /noise/i],
    ['powerlines', /powerlines/i],
    ['lightning', /lightning/i],
    ['heat and cold', /heat, cold/i],
    ['fatigue', /fatigue/i],
    ['lone work', /working alone/i],
    ['driving', /driving/i],
    ['uncapped collars', /open collars/i],
    ['splitter and cyclone', /rotation is stopped, air is off and bled/],
    ['that reading is not an induction', /not an induction/],
  ])('speak of %s', (_what, words) => {
    expect(USUAL_CAUTIONS.filter((each) => words.test(each)).length).toBeGreaterThan(0);
  });
});

test.each(['x5', 'x8', '499'])(
  'a rod check that does not agree (%s) says the condition before anybody looks for a calico',
  async (read) => {
    const sitting = await sitDown(sampleFiles(), '2026-03-14T09:08:00+08:00');
    sitting.enter(`;rod ${read}`);
    expect(sitting.state().prompt?.kind).toBe('mismatch');
    const screen = sitting
      .screen(80, 24)
      .join(' ')
      .replace(/[│\s]+/g, ' ');
    expect(screen).toContain(NEAR_SPLITTER);
  },
);
