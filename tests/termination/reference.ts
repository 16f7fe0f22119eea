// The definitions of the conditions, written a second time and another way: over single millimetres, with nothing of src/termination.
// Slow on purpose. A hole here is an array with one entry for each millimetre.

export type Truth = 'yes' | 'no' | 'cannot tell';

/** One millimetre of the log: what its row said, or why it says nothing. */
export type Said = {
  readonly rock: string;
  /** A second rock in the row, less than half of it. */
  readonly second?: string;
  readonly pyrite: number | 'not observed';
  /** How the pyrite sits; asked only where there is some. */
  readonly habit?: string;
  readonly doubt?: 'no return' | 'asked' | 'pyrite asked';
};

/** One millimetre of the sample stream. */
export type Stream = {
  readonly moisture?: 'dry' | 'moist' | 'wet';
  readonly recovery?: 'full' | 'good' | 'fair' | 'poor' | 'none';
};

/** A hole by the millimetre: index 0 is from 0 to 1 mm. */
export type Hole = {
  readonly top: number;
  /** Undefined where nothing is logged. */
  readonly log: readonly (Said | undefined)[];
  readonly drilled: number;
  readonly stream: readonly Stream[];
  readonly planned?: number;
  readonly rod: number;
  readonly rodOffset: number;
  readonly offPlan: readonly { readonly at: number; readonly mm?: number }[];
  readonly heldSince?: number;
};

/** A test of one millimetre, on what it says of its rock, its pyrite and the habit of that. */
export type Test =
  | { readonly rock: string }
  | { readonly habit: string }
  | { readonly pyrite: '<' | '>='; readonly percent: number }
  | { readonly both: readonly Test[] }
  | { readonly not: Test };

/** The conditions that are defined here; lengths in millimetres. */
export type Asked =
  | { readonly ask: 'run' | 'seen' | 'since'; readonly test: Test; readonly mm: number }
  | { readonly ask: 'past contact'; readonly test: Test; readonly mm: number; readonly thick: number }
  | { readonly ask: 'of last'; readonly test: Test; readonly mm: number; readonly of: number }
  | { readonly ask: 'share'; readonly test: Test; readonly tenths: number }
  | {
      readonly ask: 'wet' | 'no return' | 'off plan' | 'planned' | 'minimum' | 'maximum';
      readonly mm: number;
    }
  | { readonly ask: 'poor'; readonly classes: readonly string[]; readonly mm: number }
  | { readonly ask: 'rod end' | 'held' }
  | { readonly ask: 'all' | 'any'; readonly parts: readonly Asked[] }
  | { readonly ask: 'not'; readonly part: Asked };

const truth = (value: boolean): Truth => (value ? 'yes' : 'no');
const opposite = (value: Truth): Truth => (value === 'cannot tell' ? value : value === 'yes' ? 'no' : 'yes');

/** What a test says of what one millimetre says. */
export function testOne(test: Test, said: Said): Truth {
  if ('rock' in test) return truth(said.rock === test.rock || said.second === test.rock);
  if ('not' in test) return opposite(testOne(test.not, said));
  if ('both' in test) {
    const found = test.both.map((each) => testOne(each, said));
    if (found.some((each) => each === 'no')) return 'no';
    return found.every((each) => each === 'yes') ? 'yes' : 'cannot tell';
  }
  if (said.pyrite === 'not observed') return 'cannot tell';
  // A habit that was logged stands, whatever is asked about the pyrite; where there is none the pyrite has to be settled first.
  if ('habit' in test && said.pyrite > 0) return truth(said.habit === test.habit);
  if (said.doubt === 'pyrite asked') return 'cannot tell';
  if ('habit' in test) return 'no';
  return truth(test.pyrite === '<' ? said.pyrite < test.percent : said.pyrite >= test.percent);
}

/** What a test says of one millimetre of the hole. */
function at(hole: Hole, mm: number, test: Test): Truth {
  return ofSaid(hole.log[mm], test);
}

/** The same where a second rock in the row counts for nothing. */
function mainRockAt(hole: Hole, mm: number, test: Test): Truth {
  const said = hole.log[mm];
  if (said === undefined) return 'cannot tell';
  const { second: _, ...main } = said;
  return ofSaid(main, test);
}

function ofSaid(said: Said | undefined, test: Test): Truth {
  const blind = said === undefined || said.doubt === 'no return' || said.doubt === 'asked';
  return blind ? 'cannot tell' : testOne(test, said);
}

/** The depth of the hole: the rig's, or the foot of the log where that is deeper. */
export function deepestOf(hole: Hole): number {
  return Math.max(hole.drilled, hole.log.length, hole.top);
}

/** How many are below the first of so many in a row; none where there are never so many. */
function belowFirstRun(certain: readonly boolean[], thick: number): number {
  for (let start = 0; start + thick <= certain.length; start++)
    if (certain.slice(start, start + thick).every(Boolean)) return certain.length - start;
  return 0;
}

/** Where the search for a contact starts: below the last of so many in a row that are something else. */
function belowLastExit(certain: readonly boolean[], thick: number): number {
  for (let start = certain.length - thick; start >= 0; start--)
    if (certain.slice(start, start + thick).every((each) => !each)) return start + thick;
  return 0;
}

/** The truth of each millimetre from the start of the log down to a depth. */
function truths(hole: Hole, depth: number, of: (mm: number) => Truth): Truth[] {
  const found: Truth[] = [];
  for (let mm = hole.top; mm < depth; mm++) found.push(of(mm));
  return found;
}

/** Both extremes of what can be true of the millimetres in doubt. */
function bothWays(found: readonly Truth[], holds: (certain: readonly boolean[]) => boolean): Truth {
  const least = holds(found.map((each) => each === 'yes'));
  const most = holds(found.map((each) => each !== 'no'));
  if (least && most) return 'yes';
  return least || most ? 'cannot tell' : 'no';
}

const trailing = (certain: readonly boolean[]): number => {
  let length = 0;
  while (length < certain.length && certain[certain.length - 1 - length]) length++;
  return length;
};
const counted = (certain: readonly boolean[]): number => certain.filter(Boolean).length;

/** Every way of settling one millimetre in doubt, and of settling all of them alike: enough to find the extremes of "since". */
function since(found: readonly Truth[], mm: number): Truth {
  const far = (certain: readonly boolean[]): boolean => {
    const last = certain.lastIndexOf(true);
    return last >= 0 && certain.length - 1 - last >= mm;
  };
  const ways = [found.map((each) => each === 'yes'), found.map((each) => each !== 'no')];
  found.forEach((each, index) => {
    if (each === 'cannot tell') ways.push(found.map((one, other) => one === 'yes' || other === index));
  });
  const answers = new Set(ways.map(far));
  return answers.size === 2 ? 'cannot tell' : truth(answers.has(true));
}

/** What a condition says when the hole was at a depth. */
export function referenceState(asked: Asked, hole: Hole, depth: number): Truth {
  const drilled = Math.min(depth, hole.drilled);
  switch (asked.ask) {
    case 'run':
      return bothWays(
        truths(hole, depth, (mm) => at(hole, mm, asked.test)),
        (c) => trailing(c) >= asked.mm,
      );
    case 'seen':
      return bothWays(
        truths(hole, depth, (mm) => at(hole, mm, asked.test)),
        (c) => counted(c) >= asked.mm,
      );
    case 'of last':
      return bothWays(
        truths(hole, depth, (mm) => at(hole, mm, asked.test)),
        (c) => counted(c.slice(-asked.of)) >= asked.mm,
      );
    case 'share':
      return bothWays(
        truths(hole, depth, (mm) => at(hole, mm, asked.test)),
        (c) => c.length > 0 && counted(c) * 1000 >= asked.tenths * c.length,
      );
    case 'since':
      return since(
        truths(hole, depth, (mm) => at(hole, mm, asked.test)),
        asked.mm,
      );
    case 'past contact': {
      const found = truths(hole, drilled, (mm) => mainRockAt(hole, mm, asked.test));
      const past = (c: readonly boolean[]) =>
        belowFirstRun(c.slice(belowLastExit(c, asked.thick)), asked.thick);
      return bothWays(found, (c) => past(c) >= Math.max(1, asked.mm));
    }
    default:
      return otherState(asked, hole, depth, drilled);
  }
}

function otherState(asked: Asked, hole: Hole, depth: number, drilled: number): Truth {
  switch (asked.ask) {
    case 'wet':
      return bothWays(
        truths(hole, drilled, (mm) => said(hole.stream[mm]?.moisture, ['wet'])),
        (c) => trailing(c) >= asked.mm,
      );
    case 'poor':
      return bothWays(
        truths(hole, drilled, (mm) =>
          // Nothing came up of a metre without return, whatever was noted of its rod.
          said(hole.log[mm]?.doubt === 'no return' ? 'none' : hole.stream[mm]?.recovery, asked.classes),
        ),
        (c) => trailing(c) >= asked.mm,
      );
    case 'no return':
      return bothWays(
        truths(hole, depth, (mm) => noReturn(hole.log[mm])),
        (c) => trailing(c) >= asked.mm,
      );
    case 'planned':
      return hole.planned === undefined ? 'cannot tell' : truth(drilled >= hole.planned + asked.mm);
    case 'minimum':
      return truth(drilled >= asked.mm);
    case 'maximum':
      return truth(drilled >= asked.mm);
    case 'rod end':
      return truth(drilled === 0 || (drilled - hole.rodOffset) % hole.rod === 0);
    case 'held':
      return truth(hole.heldSince !== undefined && hole.heldSince <= depth);
    case 'off plan': {
      const told = hole.offPlan.filter((each) => each.at <= depth && each.mm !== undefined);
      return told.length === 0 ? 'cannot tell' : truth(told[told.length - 1]!.mm! > asked.mm);
    }
    case 'not':
      return opposite(referenceState(asked.part, hole, depth));
    case 'all':
    case 'any': {
      const found = asked.parts.map((part) => referenceState(part, hole, depth));
      const settles = asked.ask === 'all' ? 'no' : 'yes';
      if (found.includes(settles)) return settles;
      return found.includes('cannot tell') ? 'cannot tell' : opposite(settles);
    }
    default:
      throw new Error(`not defined here: ${asked.ask}`);
  }
}

function said(what: string | undefined, wanted: readonly string[]): Truth {
  return what === undefined ? 'cannot tell' : truth(wanted.includes(what));
}

function noReturn(mm: Said | undefined): Truth {
  if (mm === undefined || mm.doubt === 'asked') return 'cannot tell';
  return truth(mm.doubt === 'no return');
}
