import type { Plan } from '../hole/header.ts';
import { NORTH_LETTERS } from '../quantity/azimuth.ts';
import { type Depth, depthFromMm, parseDepth } from '../quantity/depth.ts';
import { identifierFault } from '../record/identifiers.ts';

/** A hole typed on the rig: its name, and its plan where a direction and a depth were typed behind it; else what is wrong, in words. */
export type NewHole =
  | {
      readonly ok: true;
      readonly name: string;
      readonly plan: Plan | undefined;
      /** Where logging starts: the foot of a pre-collar, else the top. */
      readonly logFromMm: Depth;
    }
  | { readonly ok: false; readonly problem: string };

/**
 * Reads `ZQRC014`, `ZQRC014 270g -60 120` or `ZQRC014 270g -60 120 from 48`: name, azimuth with the letter of its north (t, m, g, l),
 * dip, planned depth in metres; behind `from` the foot of a pre-collar, where logging starts.
 */
export function readNewHole(text: string, taken: ReadonlySet<string>, like = 'ZQRC014'): NewHole {
  const { words, logFromMm } = withoutFrom(text.trim().split(/\s+/));
  const [name = '', ...rest] = words;
  const id = name.toUpperCase();
  const fault = identifierFault(id);
  if (fault !== undefined) return wrong(`${id === '' ? 'No name' : id}: ${fault}. Type one like ${like}.`);
  if (taken.has(id)) return wrong(`${id} is there already. Choose another name.`);
  if (logFromMm === undefined)
    return wrong('After from comes the bottom of the pre-collar in metres, like from 48.');
  if (rest.length === 0) return { ok: true, name: id, plan: undefined, logFromMm };
  if (rest.length !== 3)
    return wrong('Behind the name: azimuth with its north, dip, depth, like 270g -60 120. Or nothing.');
  const plan = readPlan(rest as [string, string, string]);
  if ('problem' in plan) return wrong(plan.problem);
  if (plan.depthMm <= logFromMm) return wrong('The planned depth is above the bottom of the pre-collar.');
  return { ok: true, name: id, plan, logFromMm };
}

/** The words before `from`, and the depth behind it: 0 where there is no `from`, undefined where what is behind it is not a depth. */
function withoutFrom(words: readonly string[]): {
  readonly words: readonly string[];
  readonly logFromMm: Depth | undefined;
} {
  const at = words.indexOf('from');
  if (at < 0) return { words, logFromMm: depthFromMm(0) };
  const behind = words.slice(at + 1);
  return {
    words: words.slice(0, at),
    logFromMm: behind.length === 1 ? parseDepth(behind[0] ?? '') : undefined,
  };
}

/** A plan as three words: azimuth with the letter of its north, dip, depth in metres; or what is wrong, in words. */
export function readPlan([azimuth, dip, depth]: readonly [string, string, string]):
  | Plan
  | { readonly problem: string } {
  const parts = /^(\d{1,3}(?:\.\d+)?)([tmgl])$/.exec(azimuth);
  const azimuthNorth = NORTH_LETTERS[parts?.[2] ?? ''];
  const azimuthDeg = Number(parts?.[1]);
  if (azimuthNorth === undefined || !(azimuthDeg <= 360)) {
    return {
      problem: `${azimuth} is not an azimuth: degrees 0 to 360 and the letter of its north (t true, m magnetic, g grid, l local), like 270g.`,
    };
  }
  const dipDeg = Number(dip);
  if (!/^-?\d{1,2}(\.\d+)?$/.test(dip) || !(Math.abs(dipDeg) <= 90))
    return { problem: `${dip} is not a dip: degrees, down negative, like -60.` };
  if (dipDeg > 0) return { problem: `A dip of ${dip} points up. Did you mean -${dip}?` };
  const depthMm = parseDepth(depth);
  if (depthMm === undefined || depthMm === 0) return { problem: `${depth} is not a depth in metres.` };
  return { azimuthDeg: azimuthDeg % 360, azimuthNorth, dipDeg, depthMm };
}

const wrong = (problem: string): NewHole => ({ ok: false, problem });
