import type { Plan } from '../../hole/header.ts';
import type { North } from '../../quantity/azimuth.ts';
import { type Depth, parseDepth } from '../../quantity/depth.ts';

/** A hole typed on the rig: its name, and its plan where a direction and a depth were typed behind it; else what is wrong, in words. */
export type NewHole =
  | { readonly ok: true; readonly name: string; readonly plan: Plan | undefined }
  | { readonly ok: false; readonly problem: string };

const NAME = /^[A-Z0-9][A-Z0-9_-]{0,39}$/;
const RESERVED = /^(CON|PRN|AUX|NUL|COM[0-9]|LPT[0-9])$/;
const NORTH_LETTERS: { readonly [letter: string]: North } = {
  t: 'true',
  m: 'magnetic',
  g: 'grid',
  l: 'mine-grid',
};

/** Reads `ZQRC014` or `ZQRC014 270g -60 120`: name, azimuth with the letter of its north (t, m, g, l), dip, planned depth in metres. */
export function readNewHole(text: string, taken: ReadonlySet<string>): NewHole {
  const [name = '', ...rest] = text.trim().split(/\s+/);
  const id = name.toUpperCase();
  if (!NAME.test(id)) return wrong('A hole name is capitals, digits, - and _, at most 40, like ZQRC014.');
  if (RESERVED.test(id))
    return wrong(`${id} is a name that some computers keep for themselves. Choose another.`);
  if (taken.has(id)) return wrong(`${id} is there already. Choose another name.`);
  if (rest.length === 0) return { ok: true, name: id, plan: undefined };
  if (rest.length !== 3)
    return wrong('Behind the name: azimuth with its north, dip, depth, like 270g -60 120. Or nothing.');
  return readPlan(id, rest as [string, string, string]);
}

function readPlan(name: string, [azimuth, dip, depth]: readonly [string, string, string]): NewHole {
  const parts = /^(\d{1,3}(?:\.\d+)?)([tmgl])$/.exec(azimuth);
  const north = NORTH_LETTERS[parts?.[2] ?? ''];
  const azimuthDeg = Number(parts?.[1]);
  if (north === undefined || !(azimuthDeg <= 360))
    return wrong(
      `${azimuth} is no azimuth: degrees 0 to 360 and the letter of its north (t true, m magnetic, g grid, l local), like 270g.`,
    );
  const dipDeg = Number(dip);
  if (!/^-?\d{1,2}(\.\d+)?$/.test(dip) || !(Math.abs(dipDeg) <= 90))
    return wrong(`${dip} is no dip: degrees, down negative, like -60.`);
  if (dipDeg > 0) return wrong(`A dip of ${dip} points up. Did you mean -${dip}?`);
  const depthMm: Depth | undefined = parseDepth(depth);
  if (depthMm === undefined || depthMm === 0) return wrong(`${depth} is no depth in metres.`);
  return { ok: true, name, plan: { azimuthDeg: azimuthDeg % 360, azimuthNorth: north, dipDeg, depthMm } };
}

const wrong = (problem: string): NewHole => ({ ok: false, problem });
