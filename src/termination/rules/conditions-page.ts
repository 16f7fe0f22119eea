import { formatDepth } from '../../quantity/depth.ts';
import { CONDITIONS } from '../conditions/index.ts';
import { ABOUT } from './condition-kind.ts';
import { WORKED_CASES, type WorkedCase } from './worked-cases.ts';

type AnyKind = (typeof CONDITIONS)[number];

const GROUPS: { readonly [A in (typeof ABOUT)[number]]: string } = {
  depth: 'Depth',
  log: 'The log',
  sample: 'The samples',
  instrument: 'Instruments',
  direction: 'Direction',
  time: 'Pace and time',
  people: 'People and safety',
};

const HEAD = `# Conditions of termination rules

Generated from \`src/termination/conditions/\`: change it there.

A rule has a name, words, a verdict and one condition under \`when\`. Conditions are joined by \`all\`, \`any\` and \`not\`. Figures are metres.
Depths are measured at the drilled head, and what is logged is counted back from there, by length and not by rows: a metre drilled and not
logged yet, or cleared, is in the count and can't be told.

Each is met, not met, or can't be told. A metre without return, not logged, not observed or with an open question can't be told; a metre on which
nothing was seen is barren. Where a metre in doubt makes no difference the condition is settled all the same. _Can't tell_ never ends a hole.

The verdict is the first that applies: a hold, a void or a boundary that is met; a rule that asks, or a safety rule that can't be told; a rule that
says not yet until it is met, and is not met or can't be told; end; may end; else not yet. It is advice on ending the hole: the driller and the rules of the site prevail.
`;

/** The page about every condition that a rule can ask, as Markdown: src/termination/CONDITIONS.md. */
export function conditionsPage(): string {
  const groups = ABOUT.map((about) =>
    groupText(
      about,
      CONDITIONS.filter((kind) => kind.about === about),
    ),
  );
  return [HEAD, ...groups, casesText()].join('\n');
}

function groupText(about: (typeof ABOUT)[number], kinds: readonly AnyKind[]): string {
  return [`## ${GROUPS[about]}\n`, ...kinds.map(kindText)].join('\n');
}

function kindText({ key, title, rationale, example, ...kind }: AnyKind): string {
  const first = 'goesFirst' in kind && kind.goesFirst ? ' Goes before all other rules.' : '';
  return [
    `### \`${key}\`\n`,
    `${title}${first}\n`,
    `${rationale}\n`,
    `\`\`\`text\n${JSON.stringify({ [key]: example })}\n\`\`\`\n`,
  ].join('\n');
}

function casesText(): string {
  return ['## Worked by hand\n', 'Each is a test of the program.\n', ...WORKED_CASES.map(caseText)].join(
    '\n',
  );
}

function caseText(each: WorkedCase): string {
  const log = each.metres.map((said) => (typeof said === 'number' ? `${said} %` : said)).join(' · ');
  const drilled = each.drilledM === undefined ? '' : `, drilled to ${formatDepth(each.drilledM * 1000)} m`;
  const planned = each.plannedM === undefined ? '' : `, planned to ${formatDepth(each.plannedM * 1000)} m`;
  return [
    `### ${each.title}\n`,
    `Pyrite by metre from the collar: ${log}${drilled}${planned}.\n`,
    `\`\`\`text\n${JSON.stringify(each.when)}\n\`\`\`\n`,
    `**${each.state}.** ${each.working}\n`,
  ].join('\n');
}
