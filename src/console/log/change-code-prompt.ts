import type { Finding } from '../../finding/finding.ts';
import type { Code } from '../../schema/logging-schema.ts';
import type { CodeMember } from '../prompt.ts';
import { NOTHING, type Shown, typedLine } from '../screens/shown.ts';
import type { State } from '../state.ts';
import { fit } from '../terminal/paint/cells.ts';
import type { Theme, Tone } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { type ChangePrompt, codeOfChange, foundInChange, membersOf, readChange } from './change-code.ts';

const NAMES: Readonly<Record<CodeMember, string>> = {
  label: 'called',
  look: 'look for',
  pair: 'pair',
  key: 'key',
  retiredSince: 'retired',
  provisional: 'provisional',
};

/** A code with what can be changed of it, and what the check finds in what is typed, as it is typed. */
export function changeCodeShown(state: State, prompt: ChangePrompt, width: number, theme: Theme): Shown {
  const code = codeOfChange(state, prompt);
  if (code === undefined) return NOTHING;
  const members = membersOf(state, prompt).map((member): Line => {
    const here = member === prompt.member;
    const words = `${here ? theme.signs.cursor : ' '} ${fit(NAMES[member], 12)}${memberWords(code, member)}`;
    return spans([fit(words, width, theme.signs.ellipsis), here ? 'picked' : 'plain']);
  });
  return {
    title: `${code.code} · list ${prompt.list}`,
    lines: [...members, ...checkLines(state, prompt, width)],
    foot: [typedLine(prompt.draft, theme), line(hintOf(prompt.member, code), 'faint')],
  };
}

function memberWords(code: Code, member: CodeMember): string {
  if (member === 'provisional') return 'added on the rig, not agreed with camp yet';
  return code[member] ?? (member === 'retiredSince' ? 'no' : 'none');
}

function hintOf(member: CodeMember, code: Code): string {
  const enter = {
    label: 'Enter saves it.',
    look: 'Enter saves it.',
    pair: 'Enter saves it; empty takes it away.',
    key: 'Enter saves it; empty takes it away.',
    retiredSince:
      code.retiredSince === undefined ? 'Enter retires it from today, or a date.' : 'Enter uses it again.',
    provisional: 'Enter: camp has agreed to it.',
  }[member];
  return `↑ ↓ another part. ${enter} Esc leaves it.`;
}

const TONES: Readonly<Record<Finding['severity'], Tone>> = { fault: 'alert', warning: 'warn', note: 'faint' };

function checkLines(state: State, prompt: ChangePrompt, width: number): readonly Line[] {
  const read = readChange(state, prompt);
  if (!read.ok) return wrap(read.problem, width, 'warn');
  const found = foundInChange(state, prompt, read.change);
  if (found.length === 0) return [line('check: nothing found', 'good')];
  return found.flatMap((each) => wrap(`${each.severity}: ${each.problem}`, width, TONES[each.severity]));
}
