/**
 * A 120 m hole from its making to its end, as the keys a geologist presses and what the screen then shows. The same script is played
 * into a real terminal and straight into the console's own rule. Place, people and rocks are invented.
 */

export type Seen = string | RegExp;

/** One thing done at the console, and what is to be seen of it. */
export interface Act {
  /** Keys in their order: a character types itself, a name in angle brackets is a key: `<enter>`, `<f2>`, `<ctrl-r>`. */
  readonly keys: string;
  /** Sent at once, as a scanner sends: all of it is in one read. */
  readonly atOnce?: boolean;
  /** Minutes that pass before. */
  readonly after?: number;
  /** What the screen then shows: texts, or patterns where the width of a column is no one's business here. */
  readonly see: readonly Seen[];
  /** What it then no longer shows. */
  readonly gone?: readonly Seen[];
}

/** A stretch of the story. */
export interface Chapter {
  readonly title: string;
  readonly acts: readonly Act[];
}

/** One key of a script: a character, or a key by its name. */
export type ScriptKey = { readonly character: string } | { readonly name: string };

/** The keys of a script. */
export function keysOf(script: string): readonly ScriptKey[] {
  return [...script.matchAll(/<([a-z0-9-]+)>|(.)/gsu)].map(
    ([, name, character = '']): ScriptKey => (name === undefined ? { character } : { name }),
  );
}

/** True where a screen shows what is to be seen. */
export function shows(screen: string, seen: Seen): boolean {
  return typeof seen === 'string' ? screen.includes(seen) : seen.test(screen);
}

/** True where a screen shows all that an act is to show, and nothing that it is to take away. */
export function isThere(act: Act, screen: string): boolean {
  return act.see.every((seen) => shows(screen, seen)) && !act.gone?.some((seen) => shows(screen, seen));
}

const does = (keys: string, ...see: readonly Seen[]): Act => ({ keys, see });

/** The mark of this row, at the metre that begins at a depth. */
const inHand = (fromM: number): RegExp => new RegExp(` ${fromM} +${fromM + 1} +▌`);

/** Rows of one metre from a depth down, a line each: after each the next metre is in hand and the line is empty. */
function rows(fromM: number, ...lines: readonly string[]): readonly Act[] {
  return lines.map((line, index) => {
    const next = fromM + index + 1;
    return does(`${line}<enter>`, ` ${next}–${next + 1} ▸`, inHand(next));
  });
}

/** A rod done whose bags are as expected. */
function rod(count: number, bags: number): readonly Act[] {
  const depth = count * 6;
  return [
    { keys: '<f2>', after: 11, see: [`rod ${count} done at ${depth} m`, `${bags} bags expected`] },
    does('<enter>', `Rod ${count} done at ${depth} m, ${bags} bags.`),
  ];
}

const collar: Chapter = {
  title:
    'a hole that is not in the program is made, its bags are numbered, and two rods are done before the first row',
  acts: [
    does('n', 'a hole that is not in the program'),
    does('MBRC020 270t -60 120<enter>', 'MBRC020 made. Enter starts drilling it.', '270.0° true', '120 m'),
    does('<enter>', 'MBRC020: drilling with RC7.', ' 0–1 ▸'),
    does('<ctrl-a>', 'what does the rig do now', '▸ d  Drilling'),
    does('<enter>', 'drilling 0:00'),
    does(
      ';numbered MB000601 MB000740<enter>',
      'bags MB000601 to MB000740 numbered: they last to',
      '140 numbered bags left',
    ),
    does(';dry<enter>', 'dry at 0–6'),
    ...rod(1, 6),
    {
      keys: '<f2>',
      after: 12,
      see: ['rod 2 done at 12 m', '7 bags expected, the last calico is MB000613', 'field duplicate'],
    },
    does('613<enter>', 'Rod 2 done at 12 m, 7 bags.', '12 m behind the rig', '(drilled, not logged)'),
  ],
};

const cover: Chapter = {
  title: 'cover and clay, a rod behind the rig; a control is put off, and a metre gives no return',
  acts: [
    ...rows(0, 'cdwx6ox3tnow/pad scraped, brown clay', '.', '.', 'stye', '.', 'fclrrd/nodules to 6 mm'),
    ...rod(3, 6),
    ...rows(6, '.', 'pawx5mzog', '.', 'ye', '.', 'uscm'),
    ...rod(4, 6),
    ...rows(12, '.', 'we', '.', '.', 'nr/lost the air, nothing in the cyclone', '.='),
    does(';later no blanks at the splitter<enter>', 'put off: no blanks'),
    ...rod(5, 6),
    ...rows(18, 'hmwx4lseg/relict needles', '.', 'vn1qz/quartz floating in clay', 'vn0', '.', '.'),
    ...rod(6, 6),
    does(';place<enter>', 'blank MB000627 placed'),
  ],
};

const fresh: Chapter = {
  title: 'down into fresh rock; a rod whose bags don’t match is named and mended',
  acts: [
    ...rows(24, 'wx3oc', '.', 'ox2', 'cl1', '.', 'py,de/half gone to rust'),
    {
      keys: '<f2>',
      after: 12,
      see: ['rod 7 done at 42 m', '8 bags expected, the last calico is MB000645', 'standard'],
    },
    does(
      '644 x7<enter>',
      'bags don’t match: 644 x7',
      'b = a control forgotten: MB000640–644 hold 37–42; the standard goes to MB000645',
    ),
    does(
      'b<enter>',
      'rod 7 done at 42 m, fixed as a control forgotten: MB000640–644 hold 37–42; the standard goes to',
    ),
    ...rows(30, 'wx2', '.', 'wx1ox1ez3mema1/top of fresh rock', '.', 'c2', '.'),
    ...rod(8, 7),
    ...rows(36, 'lt1fz1', '.', 'p0', '.', 'c1', '.'),
    ...rod(9, 7),
    ...rows(42, 'ykez4c0lt0ma0fz0ct/sharp', '.', 'be', '.', 'py,', '.'),
  ],
};

const back: Chapter = {
  title:
    'a mistake ten metres back is corrected; the sample comes up wet; a scanner breaks into a line half typed',
  acts: [
    does('vn1q', ' 48–49 ▸ vn1q'),
    does('<up><up><up><up><up><up><up><up><up><up>', 'amending 38–39', ' 38–39 ▸ p0'),
    does('lt2<enter>', 'amended 38–39', ' 48–49 ▸ vn1q', 'logging 48–49'),
    does('c<enter>', ' 49–50 ▸', inHand(49)),
    { keys: ';wet<enter>', after: 3, see: ['wet at 54–60'] },
    ...rod(10, 6),
    does('vn2', ' 49–50 ▸ vn2'),
    { keys: 'MB000655<enter>', atOnce: true, see: [/MB000655.* primary 50–51/, ' 49–50 ▸ vn2'] },
    does('<enter>', ' 50–51 ▸', inHand(50)),
    ...rows(50, '.'),
    does('vn20<enter>', 'veins goes from 2 % to 20 % in one row. Add = to accept it', ' 51–52 ▸ vn20'),
    ...rows(51, '<backspace><backspace>0', '.', '.'),
    ...rod(11, 7),
    ...rows(54, 'fise1', '.', 'vn1qu', 'ak1', 'p1', 'vn2'),
    ...rod(12, 6),
  ],
};

/** The first 24 rows. */
export const TO_COVER: readonly Chapter[] = [collar, cover];

/** From there to row 60. */
export const AFTER_COVER: readonly Chapter[] = [fresh, back];

const zone: Chapter = {
  title:
    'through the zone: arsenopyrite, veins, a caution; the latest row undone and done again; a range amended after its preview',
  acts: [
    ...rows(60, 'p2ar,', 'vn5s2', 'p3r1', 'vn10k2', '.', 'r2p5'),
    does(';u<enter>', 'Undone: logged 65–66.', ' 65–66 ▸'),
    does(';r<enter>', 'Done again: logged 65–66.', ' 66–67 ▸'),
    ...rod(13, 7),
    ...rows(66, 'vn15', 'p3r1', 'vn7', 'r,p2', 'vn3', 'r0p1'),
    ...rod(14, 6),
    ...rows(72, 'vn1', '.', 'k1', 's1', 'p.5', '.'),
    does(';72-75 qi1<enter>', 'Enter makes the change. Esc changes nothing.'),
    { ...does('<enter>', '72–75', ' 78–79 ▸'), gone: ['Enter makes the change'] },
    ...rod(15, 7),
  ],
};

const survey: Chapter = {
  title: 'the rig surveys and drills on; the shots are recorded with the run they belong to',
  acts: [
    does('<ctrl-a>', 'what does the rig do now'),
    does('<down><enter>', 'surveying 0:00'),
    does(';shot 90 -59.2 271.4<enter>', 'What does the tool find north by?'),
    does('<enter>', 'From which north does it give the azimuth?', 'true   Enter alone takes this'),
    does('<enter><enter><enter>', 'Which tool: its name or number?'),
    does('G4<enter>', 'How far is the sensor behind the bit'),
    does('<enter>', 'Who runs it?'),
    does('MTA<enter>', 'a shot, as the driller reads it out', '▸ 90 -59.2 271.4'),
    does('<enter>', 'Looks wrong. Add = to accept it.', "can't be turned to grid north"),
    does(' =<enter>', 'Shot at 90 m recorded: dip -59.2°, azimuth 271.4° true.'),
    { keys: '<ctrl-a>', after: 9, see: ['▸ d  Drilling'] },
    does('<enter>', 'drilling 0:00'),
  ],
};

const tail: Chapter = {
  title: 'a barren tail to the planned depth',
  acts: [
    ...rows(78, '.', 'vn0', '.', 'p,', '.', '.'),
    ...rod(16, 6),
    ...rows(84, '.', 'k0', '.', 'p0', '.', 's0ct/back in plain greywacke'),
    ...rod(17, 7),
    ...rows(90, '.', '.', 'be', '.', '.', '.'),
    ...rod(18, 6),
    ...rows(96, '.', 'ez5', '.', '.', '.', '.'),
    ...rod(19, 7),
    ...rows(102, 'shez2dyct', '.', '.', '.', '.', 'py,'),
    ...rod(20, 6),
    ...rows(108, 'p0', '.', '.', '.', '.', '.', 'vn,', 'vn0', '.', '.', '.', '.'),
  ],
};

const end: Chapter = {
  title: 'the end: what is open is seen and mended, then the decision is recorded and the hole closed',
  acts: [
    does(';end<enter>', 'Final depth by rod count, in metres:', '▸ 120'),
    does('<enter>', 'Still open:', 'The collar is not capped or plugged'),
    { ...does('<escape>', ' 120–121 ▸'), gone: ['Still open:'] },
    { keys: ';shot 120 -58.8 271.9<enter>', after: 14, see: ['Shot at 120 m recorded'] },
    does(';capped<enter>', 'collar capped'),
    does('<f12>', 'Final depth by rod count, in metres:'),
    does('<enter>', 'Nothing is open.'),
    does('<enter>', 'How is the collar left?'),
    does('c<enter>', 'The decision is yours and is recorded.'),
    does(
      'planned depth, barren tail; camp told by radio<enter>',
      'MBRC020 ended at 120 m and closed. Collar capped.',
      'COMPLETE',
    ),
    does('.<enter>', 'is closed', ' 120–121 ▸ .'),
    { ...does('<escape>', ' 120–121 ▸'), gone: [' 120–121 ▸ .'] },
    does('<f10>', 'holes · rig RC7', /MBRC020 +complete/),
  ],
};

/** From there to the end. */
export const FROM_ROW_60: readonly Chapter[] = [zone, survey, tail, end];
