import type { Decision } from '../../hole/ending.ts';
import type { RuleCondition } from './rule.ts';

/** What the case says of each metre from the top down: pyrite in percent, or why the metre says nothing. */
type MetreSaid = number | 'no return' | 'asked' | 'not logged';

/** A condition worked by hand on a short log. The page prints it and a test holds the program against it. */
export type WorkedCase = {
  readonly title: string;
  /** Metre by metre from the collar; the log reaches to the last of them. */
  readonly metres: readonly MetreSaid[];
  /** Depth of the rig where it is not the foot of the log. */
  readonly drilledM?: number;
  readonly plannedM?: number;
  readonly when: RuleCondition;
  readonly state: Decision['rules'][number]['state'];
  readonly haveM?: number;
  readonly sinceM?: number;
  readonly earliestM?: number;
  /** The working, by hand. */
  readonly working: string;
};

const BARREN = { field: 'sulphides', of: 'PYR', lessThan: 1 } as const;
const LODE = { field: 'sulphides', of: 'PYR', atLeast: 2 } as const;

export const WORKED_CASES: readonly WorkedCase[] = [
  {
    title: 'A barren tail that is long enough',
    metres: [3, 5, 0, 0.5, 0, 0],
    when: { inARow: { where: BARREN, forM: 4 } },
    state: 'met',
    haveM: 4,
    sinceM: 6,
    earliestM: 6,
    working:
      'Back from 6 m: 0, 0, 0.5, 0 are under 1 %, the metre 1–2 with 5 % ends the run. 4 of 4 m, met at 6 m.',
  },
  {
    title: 'A barren tail cut off by one metre',
    metres: [3, 0, 0, 2, 0, 0],
    when: { inARow: { where: BARREN, forM: 4 } },
    state: 'not met',
    haveM: 2,
    earliestM: 8,
    working: 'Back from 6 m: 0, 0, then 2 % at 3–4. 2 of 4 m; two more barren metres would do, at 8 m.',
  },
  {
    title: 'A barren tail with a metre that did not come up',
    metres: [3, 0, 0, 'no return', 0, 0],
    when: { inARow: { where: BARREN, forM: 4 } },
    state: 'cannot tell',
    haveM: 2,
    earliestM: 8,
    working:
      'Back from 6 m: 0, 0, then nothing is known of 3–4. Had it been barren the run would be 5 m: enough. Had it been rich, 2 m: not enough. So it can’t be told, and does not end the hole.',
  },
  {
    title: 'A barren tail behind the rig',
    metres: [3, 0, 0, 0, 0],
    drilledM: 7,
    when: { inARow: { where: BARREN, forM: 4 } },
    state: 'cannot tell',
    haveM: 4,
    earliestM: 7,
    working:
      'The log is barren for 4 m, but the hole is 7 m deep. Back from 7 m: two metres not yet logged, then four barren ones. Logged barren the tail is 6 m long, logged rich it is none. Log 2 m more.',
  },
  {
    title: 'Rich rock below cleared metres',
    metres: [3, 0, 0, 0, 0, 'not logged', 5],
    plannedM: 7,
    when: { inARow: { where: BARREN, forM: 4 } },
    state: 'not met',
    haveM: 0,
    earliestM: 11,
    working: 'Back from 7 m: 5 % at 6–7 ends the run at once, whatever the metre above it held.',
  },
  {
    title: 'A metre in doubt that makes no difference',
    metres: [3, 'no return', 0, 0, 0, 0],
    when: { inARow: { where: BARREN, forM: 4 } },
    state: 'met',
    haveM: 4,
    sinceM: 6,
    working: 'Back from 6 m: four barren metres before the one in doubt. Whatever it held, it is met.',
  },
  {
    title: 'So many of the last, with a stray metre',
    metres: [4, 0, 0, 2, 0, 0, 0],
    when: { ofLast: { where: BARREN, atLeastM: 5, ofM: 6 } },
    state: 'met',
    haveM: 5,
    sinceM: 7,
    working: 'The last 6 m are 1–7: five of them under 1 %. At 6 m the last six were 0–6, and four.',
  },
  {
    title: 'Past the lode, where there was one',
    metres: [0, 3, 0, 0, 0],
    when: { sinceLastSeen: { where: LODE, atLeastM: 3 } },
    state: 'met',
    haveM: 3,
    sinceM: 5,
    working: '2 % and more was last seen at 1–2, its foot at 2 m: 3 m since.',
  },
  {
    title: 'Past the lode, where there was none',
    metres: [0, 0, 0, 0, 0],
    when: { sinceLastSeen: { where: LODE, atLeastM: 3 } },
    state: 'not met',
    working: 'Nothing of 2 % was seen: there is nothing to be past, however barren the log.',
  },
  {
    title: 'Seen at all, and a question open',
    metres: [0, 'asked', 0],
    when: { seen: { where: LODE, forM: 1 } },
    state: 'cannot tell',
    haveM: 0,
    working:
      'No sure metre; the one whose row is asked about may be one. Once it is settled the rule is settled.',
  },
  {
    title: 'Past a contact, with metres that are not logged',
    metres: [0, 0, 3, 3, 3],
    drilledM: 7,
    when: { pastContact: { into: LODE, byM: 5 } },
    state: 'met',
    haveM: 5,
    sinceM: 7,
    working:
      'The contact is at 2 m, with 3 m logged below it; the rig is at 7 m: 5 m past it, though the log has come to 5 m only. Two metres of another rock would not make a dyke of it.',
  },
  {
    title: 'Past a contact that may be left again in metres that are not logged',
    metres: [0, 0, 3, 3, 3],
    drilledM: 8,
    when: { pastContact: { into: LODE, byM: 6 } },
    state: 'cannot tell',
    haveM: 6,
    working:
      'The contact is at 2 m and the rig 6 m past it. But no one has seen the 3 m at 5–8: were they all another rock, the three metres above were a dyke.',
  },
  {
    title: 'A dyke is not a contact',
    metres: [0, 3, 3, 0, 0, 0, 0, 0],
    when: { pastContact: { into: LODE, byM: 4 } },
    state: 'not met',
    working: 'Two metres at 1–3, and a contact has 3 m of it in a row where the rule says no other figure.',
  },
  {
    title: 'A contact that may be in the metres not logged',
    metres: [0, 0],
    drilledM: 10,
    when: { pastContact: { into: LODE, byM: 6 } },
    state: 'cannot tell',
    working:
      'No contact to 2 m. It may have come right there, and the rig would be 8 m past it; or not at all.',
  },
  {
    title: 'A share of the log',
    metres: [0, 0, 'no return', 3],
    when: { share: { where: BARREN, atLeastPercent: 60 } },
    state: 'cannot tell',
    working:
      'Two of four metres are under 1 %: 50 %. With the one in doubt it would be 75 %. 60 % lies between.',
  },
  {
    title: 'The planned depth, and a barren foot',
    metres: [3, 0, 0, 0],
    plannedM: 6,
    when: {
      all: [{ plannedDepthReached: { plusM: 0 } }, { inARow: { where: BARREN, forM: 2 } }],
    },
    state: 'not met',
    haveM: 4,
    earliestM: 6,
    working: 'The foot is barren for 3 m. The depth of 6 m is not drilled: no sooner than there.',
  },
];
