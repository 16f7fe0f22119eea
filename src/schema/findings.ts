import { defineFinding } from '../finding/finding.ts';

/** Raised where bag numbers could be read as a line. */
export const bagPrefix = defineFinding({
  code: 'schema-bag-number-reads-as-line',
  severity: 'fault',
  title: 'A bag number could be read as a line of the log.',
  rationale:
    'A scanner types into the same line. A number that begins with a small letter could be logged as geology.',
});

/** Raised where `notAcross` names a field that is not there. */
export const barrierUnknown = defineFinding({
  code: 'schema-barrier-unknown',
  severity: 'fault',
  title: 'A field does not carry across a change of something that is not there.',
  rationale: 'It would carry across that change all the same, and no one would see it.',
});

/** Raised where `notAcross` names a field that is below, or the field itself. */
export const barrierLater = defineFinding({
  code: 'schema-barrier-later',
  severity: 'fault',
  title: 'A field does not carry across a change of a field that is below it on the log sheet.',
  rationale: 'Fields are filled from the top down: what is below is not known yet.',
});

/** Raised where a field has `notAcross` and does not carry. */
export const barrierIdle = defineFinding({
  code: 'schema-barrier-idle',
  severity: 'warning',
  title: 'A field that does not carry is told where not to carry.',
  rationale: 'One of the two is not meant: it never carries, whatever changes.',
});

/** Raised for what a schema has that it did not have. */
export const changeAdded = defineFinding({
  code: 'change-added',
  severity: 'note',
  title: 'The schema has something new.',
  rationale: 'Rows logged before could not say it: that it is not there says nothing.',
});

/** Raised where rows hold a code that the schema no longer has. */
export const changeCodeGone = defineFinding({
  code: 'change-code-gone',
  severity: 'warning',
  title: 'Rows hold a code that the schema no longer has.',
  rationale:
    'They still decode by the legend of their hole, but the code can’t be looked up, and checks call it unknown.',
});

/** Raised where a code that rows hold is now called something else. */
export const changeCodeMeaning = defineFinding({
  code: 'change-code-meaning',
  severity: 'fault',
  title: 'A code that rows were logged with is now called something else.',
  rationale: 'The rows were seen by someone who meant the old words. A changed meaning is a new code.',
});

/** Raised where rows hold a field that is no longer on the log sheet. */
export const changeFieldGone = defineFinding({
  code: 'change-field-gone',
  severity: 'warning',
  title: 'Rows have a field that is no longer on the log sheet.',
  rationale: 'They keep it and decode by the legend of their hole; new rows will not have it.',
});

/** Raised where a field that rows hold is now of another kind, unit, list or scale. */
export const changeField = defineFinding({
  code: 'change-field',
  severity: 'fault',
  title: 'A field that rows were logged with is now of another kind, unit, list or scale.',
  rationale: 'The same value would be read in another way.',
});

/** Raised where a level that rows may hold is gone or called something else. */
export const changeLevelMeaning = defineFinding({
  code: 'change-level-meaning',
  severity: 'fault',
  title: 'A level of a scale is gone or called something else.',
  rationale: 'Rows hold the number of the level: under another scale the same number says another thing.',
});

/** Raised where what rows were logged with is now typed in another way. */
export const changeStrokesDropped = defineFinding({
  code: 'change-strokes-dropped',
  severity: 'warning',
  title: 'What rows were logged with is now typed another way.',
  rationale:
    'The old strokes are refused from now on. That is safe, and someone will have to learn it in the middle of a hole.',
});

/** Raised where strokes that rows were logged with now type another thing. */
export const changeStrokesShifted = defineFinding({
  code: 'change-strokes-shifted',
  severity: 'fault',
  title: 'A pair or key that rows were logged with now types something else.',
  rationale: 'Hands remember, and an entry line copied from yesterday would log another thing today.',
});

/** Raised where files extend one another in a ring. */
export const circular = defineFinding({
  code: 'schema-circular',
  severity: 'fault',
  title: 'Logging schemas extend one another in a ring.',
  rationale: 'A ring has no beginning, so there is nothing to start from.',
});

/** Raised where a list has a code twice, capitals aside. */
export const codeTwice = defineFinding({
  code: 'schema-code-twice',
  severity: 'fault',
  title: 'A list has the same code twice.',
  rationale: 'No one could say later which of the two was logged.',
});

/** Raised where a code holds what the entry line can’t say. */
export const codeUnsayable = defineFinding({
  code: 'schema-code-unsayable',
  severity: 'fault',
  title: 'A code can’t be typed in the entry line.',
  rationale: 'A code that can’t be typed can’t be logged.',
});

/** Raised where an instrument reading or a required column would carry down the hole. */
export const columnCarries = defineFinding({
  code: 'schema-column-carries',
  severity: 'fault',
  title: 'A reading of an instrument is set to carry or to be required.',
  rationale:
    'A reading belongs to one metre, and it comes in later than the row. Carried, it would be made up; required, no row could be saved before it.',
});

/** Raised where one file writes the same field, code or level twice. */
export const entryTwice = defineFinding({
  code: 'schema-entry-twice',
  severity: 'fault',
  title: 'A field, code or level is written twice in one file.',
  rationale: 'The second would quietly replace the first.',
});

/** Raised where a code library would take the caution of a danger away. */
export const importLosesCaution = defineFinding({
  code: 'codes-caution-lost',
  severity: 'fault',
  title: 'A code library would take cautions away.',
  rationale:
    'A void, a loss of return or fibre would be logged without a warning, and the rules would count the metre as rock.',
});

/** Raised where the words of a code name a danger, and it has no caution. */
export const cautionMissing = defineFinding({
  code: 'schema-caution-missing',
  severity: 'warning',
  title: 'A code is called like a danger and has no caution.',
  rationale:
    'Whoever logs it is not warned, and a rule about voids or fibre takes the metre for common rock.',
});

/** Raised where a plan expects a void or fibre and no code can say so. */
export const hazardUnloggable = defineFinding({
  code: 'schema-hazard-unloggable',
  severity: 'warning',
  title: 'A plan expects a danger that no code stands for.',
  rationale: 'When the hole meets it no one can log it: no warning comes, and no rule sees it.',
});

/** Raised where a CSV of codes lacks a column that the mapping names. */
export const importColumn = defineFinding({
  code: 'codes-column-missing',
  severity: 'fault',
  title: 'A CSV of codes lacks a column that was named.',
  rationale: 'Nothing of it is used, because what the other columns mean would be a guess.',
});

/** Raised where a file of codes is not CSV. */
export const importCsv = defineFinding({
  code: 'codes-not-csv',
  severity: 'fault',
  title: 'A file of codes is not readable as CSV.',
  rationale: 'A quote left open swallows every line below it.',
});

/** Raised where a line of a CSV of codes gives no code. */
export const importRow = defineFinding({
  code: 'codes-line-unusable',
  severity: 'fault',
  title: 'A line of a CSV of codes can’t be used.',
  rationale: 'A code library with a line left out would refuse what someone logs later.',
});

/** Raised where a single key names something that takes no amount. */
export const keyUseless = defineFinding({
  code: 'schema-key-useless',
  severity: 'warning',
  title: 'A single key can never be used.',
  rationale:
    'A single key is always followed by an amount. Where no amount belongs, the pair types it; the key is lost to something that needs it.',
});

/** Raised where two keys, typed one after the other with the amount of the first left out, are a pair that takes an amount. */
export const keysReadAsPair = defineFinding({
  code: 'schema-keys-read-as-pair',
  severity: 'warning',
  title: 'Two keys in a row read as a pair of something else.',
  rationale:
    'With the amount of the first key left out, the two run together: the line would say another thing and nothing would be refused.',
});

/** Raised where a list calls two codes the same. */
export const labelTwice = defineFinding({
  code: 'schema-label-twice',
  severity: 'warning',
  title: 'Two codes of a list have the same words.',
  rationale: 'The echo and the pick list show words. Two codes with the same ones can’t be told apart.',
});

/** Raised where the steps of a percent field do not rise. */
export const ladder = defineFinding({
  code: 'schema-ladder',
  severity: 'fault',
  title: 'The steps of a percent field do not rise from over 0 to at most 100.',
  rationale: 'Off the steps the console asks. Steps in no order would make it ask about true rows.',
});

/** Raised where a field takes its codes from a list with none to use. */
export const listEmpty = defineFinding({
  code: 'schema-list-empty',
  severity: 'warning',
  title: 'A field names a list without a code that can be used.',
  rationale:
    'Nothing can be logged in it until the list has a code. While a file is being written that is all right.',
});

/** Raised where a column of the log on screen is not a field, or can't be one. */
export const columnUnknown = defineFinding({
  code: 'schema-column-unknown',
  severity: 'warning',
  title: 'A column of the log on screen shows nothing.',
  rationale: 'Whoever chose the columns looks for it at the rig, and the room of the others is used up.',
});

/** Raised where a list is to be taken from a style that is not there, or that has no such list. */
export const listNotTaken = defineFinding({
  code: 'schema-list-not-taken',
  severity: 'fault',
  title: 'A list is taken from a style that does not have it.',
  rationale: 'Its codes would be missing, and rows logged without them would have to be logged again.',
});

/** Raised where a field takes its codes from a list that is not there. */
export const listMissing = defineFinding({
  code: 'schema-list-missing',
  severity: 'warning',
  title: 'A field names a list that is not there.',
  rationale:
    'Nothing can be logged in it until the list is written. A field may come before its list; a misspelt list never comes.',
});

/** Raised where two fields take their codes from one list. */
export const listShared = defineFinding({
  code: 'schema-list-shared',
  severity: 'warning',
  title: 'Two fields take their codes from one list.',
  rationale: 'Pairs and keys type into the first of the two. The other has to be said by its name each time.',
});

/** Raised where one object of a file names a member twice. */
export const memberTwice = defineFinding({
  code: 'schema-member-twice',
  severity: 'fault',
  title: 'A member is written twice in one place.',
  rationale:
    'Programs keep one of the two and drop the other without a word. A person has to say which is meant.',
});

/** Raised where a file written by hand is no JSON, or more of it than anybody writes. */
export const notJson = defineFinding({
  code: 'schema-not-json',
  severity: 'fault',
  title: 'A file is not readable as JSON.',
  rationale:
    'Nothing in it can be trusted once a comma or a quote is missing, so nothing of it is used until it is fixed.',
});

/** Raised where a number field has no room between its limits. */
export const numberRange = defineFinding({
  code: 'schema-number-range',
  severity: 'fault',
  title: 'The limits of a number field leave no number.',
  rationale: 'Every reading would be refused.',
});

/** Raised where an only-when asks a field that is below. */
export const onlyWhenLater = defineFinding({
  code: 'schema-only-when-later',
  severity: 'fault',
  title: 'An only-when asks a field that is below it on the log sheet.',
  rationale: 'Fields are filled from the top down: what is below is not known yet.',
});

/** Raised where an only-when compares a field in a way that its kind has no answer for. */
export const onlyWhenSenseless = defineFinding({
  code: 'schema-only-when-senseless',
  severity: 'warning',
  title: 'An only-when compares a field in a way it has no answer for.',
  rationale:
    'A text has no size and a percent has no code: the comparison can never be decided, so the field would never be asked.',
});

/** Raised where an only-when names a field, code or level that is not there. */
export const onlyWhenUnknown = defineFinding({
  code: 'schema-only-when-unknown',
  severity: 'fault',
  title: 'An only-when asks something that is not there.',
  rationale: 'It could never be decided, so the field would never be asked.',
});

/** Raised where the style or file underneath is not the one that was agreed with. */
export const parentChanged = defineFinding({
  code: 'schema-parent-changed',
  severity: 'warning',
  title: 'The style or file underneath has changed since it was last agreed with.',
  rationale:
    'A list that changes under a project half-way through a program makes its holes hard to compare. Someone should look before the next hole.',
});

/** Raised where a file extends a style or a file that is not there. */
export const parentMissing = defineFinding({
  code: 'schema-parent-missing',
  severity: 'fault',
  title: 'A logging schema extends something that is not there.',
  rationale:
    'Without its parent most of its lists are missing, and a log on the rest would have to be done again.',
});

/** Raised where an entry is to come before or after one that is not there. */
export const placeUnknown = defineFinding({
  code: 'schema-place-unknown',
  severity: 'fault',
  title: 'An entry is placed beside one that is not there.',
  rationale: 'The order of the log sheet would be a guess.',
});

/** Raised for each code that was added on the rig and not agreed with camp yet. */
export const provisional = defineFinding({
  code: 'schema-provisional',
  severity: 'note',
  title: 'A code was added on the rig and is not agreed with camp yet.',
  rationale: 'Camp settles it: keeps it, or says which code it should have been.',
});

/** Raised where a reading of an instrument is not taken: as typed down a column, or as a line of a CSV. */
export const readingNotTaken = defineFinding({
  code: 'reading-not-taken',
  severity: 'fault',
  title: 'A reading of an instrument is not taken.',
  rationale:
    'A reading laid against the wrong metre, or in the wrong unit, looks like any other: nothing of a file is taken until every line of it fits.',
});

/** Raised where a pair, a field or a code is a word that the entry line or a file keeps for itself. */
export const reserved = defineFinding({
  code: 'schema-reserved-word',
  severity: 'fault',
  title: 'A word that is kept for something else is used.',
  rationale: 'The line would mean two things, or two columns of the handover would have one name.',
});

/** Raised where a code in use has the pair or key of a retired one. */
export const retiredPairReused = defineFinding({
  code: 'schema-retired-pair-reused',
  severity: 'fault',
  title: 'The pair or key of a retired code is given to another.',
  rationale:
    'Fingers remember. Someone who has typed it for years would log the new code and mean the old one.',
});

/** Raised where a percent is not one, or a trace is logged where none may be. */
export const rowAmountOff = defineFinding({
  code: 'row-amount-off',
  severity: 'fault',
  title: 'An amount is not over 0 and at most 100 percent, or is a trace where none may be.',
  rationale: 'Sums and termination rules would be wrong.',
});

/** Raised where a field that always is something is logged as none. */
export const rowCannotBeNone = defineFinding({
  code: 'row-cannot-be-none',
  severity: 'fault',
  title: 'A field that always is something is logged as none.',
  rationale: 'There is always a rock. None there means a slip.',
});

/** Raised where a row holds a code that its list does not have. */
export const rowCodeUnknown = defineFinding({
  code: 'row-code-unknown',
  severity: 'fault',
  title: 'A row holds a code that its list does not have.',
  rationale: 'No one could say what was seen.',
});

/** Raised where a number has more decimals than its field. */
export const rowDecimals = defineFinding({
  code: 'row-decimals',
  severity: 'fault',
  title: 'A number has more decimals than its field.',
  rationale: 'The instrument does not give them; most likely the point is in the wrong place.',
});

/** Raised where a cell of several codes has none. */
export const rowEmptyCell = defineFinding({
  code: 'row-empty-cell',
  severity: 'fault',
  title: 'A cell of several codes has none.',
  rationale: 'None seen and not observed are written in words; an empty cell could mean either.',
});

/** Raised where a row lacks a field that every row must have. */
export const rowFieldMissing = defineFinding({
  code: 'row-field-missing',
  severity: 'fault',
  title: 'A row lacks a field that every row has.',
  rationale: 'Missing is neither none seen nor not observed: the rules could not tell which.',
});

/** Raised where a row holds a field that the schema does not have. */
export const rowFieldUnknown = defineFinding({
  code: 'row-field-unknown',
  severity: 'fault',
  title: 'A row holds a field that the schema does not have.',
  rationale: 'No one could say what the value means.',
});

/** Raised where a row ends where it begins, or above. */
export const rowInterval = defineFinding({
  code: 'row-interval',
  severity: 'fault',
  title: 'A row has no length.',
  rationale: 'A row without length covers no metre, and the log would have a gap that no one sees.',
});

/** Raised where a level is not on the scale of its field. */
export const rowLevelOffScale = defineFinding({
  code: 'row-level-off-scale',
  severity: 'fault',
  title: 'A level is not on the scale of its field.',
  rationale: 'It has no words, and can’t be compared.',
});

/** Raised where a row without return holds something observed. */
export const rowNoReturnObserves = defineFinding({
  code: 'row-no-return-observes',
  severity: 'fault',
  title: 'A row without return holds something observed.',
  rationale: 'Nothing came up, so nothing was seen; the metre must never count as barren.',
});

/** Raised where a number is outside the limits of its field. */
export const rowNumberOutOfRange = defineFinding({
  code: 'row-number-out-of-range',
  severity: 'fault',
  title: 'A number is outside the limits of its field.',
  rationale: 'Most likely a digit too many, or another unit.',
});

/** Raised where a row and an only-when disagree. */
export const rowOnlyWhen = defineFinding({
  code: 'row-only-when',
  severity: 'fault',
  title: 'A field is in a row that it is not asked of, or is missing where it is.',
  rationale: 'The habit of sulphides in a row without any, or veins without what fills them, is a slip.',
});

/** Raised where the second code is the first. */
export const rowSecondIsFirst = defineFinding({
  code: 'row-second-is-first',
  severity: 'fault',
  title: 'The second code of a cell is the first.',
  rationale: 'One of the two is a slip.',
});

/** Raised where the percents of a field add up to more than its limit. */
export const rowSumOverLimit = defineFinding({
  code: 'row-sum-over-limit',
  severity: 'fault',
  title: 'The percents of a field add up to more than its limit.',
  rationale: 'More than all of the chips can’t be sulphide: a digit too many, most likely.',
});

/** Raised where a row holds together what the project says is seldom seen together. */
export const rowUnlikely = defineFinding({
  code: 'row-unlikely',
  severity: 'warning',
  title: 'A row holds together what is seldom seen together.',
  rationale:
    'It may be true, and then it is worth a remark. More often one of the two is a slip that no other check can see.',
});

/** Raised where a cell holds another kind of value than its field. */
export const rowWrongKind = defineFinding({
  code: 'row-wrong-kind',
  severity: 'fault',
  title: 'A cell holds another kind of value than its field.',
  rationale: 'The value can’t be read, compared or handed over.',
});

/** Raised where the levels of a scale do not run 1, 2, 3 and so on, or share a code. */
export const scaleBroken = defineFinding({
  code: 'schema-scale-broken',
  severity: 'fault',
  title: 'The levels of a scale are not in order from 1.',
  rationale:
    'A digit types a level. A gap, a level twice or a level that takes two digits can’t be typed or compared.',
});

/** Raised where a field or list of levels names a scale that is not there. */
export const scaleMissing = defineFinding({
  code: 'schema-scale-missing',
  severity: 'fault',
  title: 'A field names a scale that is not there.',
  rationale: 'The field could not be logged.',
});

/** Raised where densities are given by the level of a field that is none, or by a level that its scale has not. */
export const densityLevel = defineFinding({
  code: 'schema-density-level',
  severity: 'fault',
  title: 'A density hangs on a level that is not there.',
  rationale: 'Recovery of weathered metres would be counted with the density of fresh rock, and look poor.',
});

/** Raised where a file has a member that is not known there, misses one, or holds the wrong kind of thing. */
export const shape = defineFinding({
  code: 'schema-shape',
  severity: 'fault',
  title: 'Something in a file is not what belongs there.',
  rationale:
    'A misspelt member would otherwise be passed over, and the log would run on something no one chose.',
});

/** Raised where one pair or one key would type two things. */
export const strokesClash = defineFinding({
  code: 'schema-strokes-clash',
  severity: 'fault',
  title: 'One pair or key types two things.',
  rationale: 'The console could not know which is meant, and wrong data is worse than none.',
});

/** Raised where one slip of a finger types something in another field. */
export const strokesNearElsewhere = defineFinding({
  code: 'schema-strokes-near-elsewhere',
  severity: 'warning',
  title: 'One slip of a finger types something in another field.',
  rationale:
    'The echo shows it in other words, so it is more likely to be seen than a slip within a field; it is still better to have none.',
});

/** Raised where one slip of a finger types another code of the same field, and nothing would ask. */
export const strokesNear = defineFinding({
  code: 'schema-strokes-near',
  severity: 'fault',
  title: 'One slip of a finger types another code of the same field.',
  rationale:
    'A slip to the next key, or two letters the wrong way round, would log the wrong thing without a question. No one finds it later.',
});

/** Raised where a pair or a key is none. */
export const strokesUntypable = defineFinding({
  code: 'schema-strokes-untypable',
  severity: 'fault',
  title: 'A pair or key can’t be typed.',
  rationale:
    'A pair is two different lower-case letters, so that a key that bounces makes no pair; a key is one. Nothing else can be told apart in the entry line.',
});

/** Raised where `third` stands without `second`. */
export const thirdAlone = defineFinding({
  code: 'schema-third-without-second',
  severity: 'fault',
  title: 'A field takes a third code and no second one.',
  rationale: 'A third is beside a second. The field would take neither.',
});

/** Raised where a row qualifies what it does not hold, or by what the field does not take. */
export const rowQualifierOff = defineFinding({
  code: 'row-qualifier-off',
  severity: 'fault',
  title: 'A row says more of something in a way that the schema doesn’t have.',
  rationale:
    'No one could read it back: the word is of another list, or of something that the row doesn’t hold.',
});

/** Raised where `of` of a qualifier names a code that the field has not. */
export const qualifierOfUnknown = defineFinding({
  code: 'schema-qualifier-of-unknown',
  severity: 'fault',
  title: 'A qualifier is for a code that its field does not have.',
  rationale: 'It could never be said, and whoever wrote it counts on it.',
});

/** Raised where the list of a qualifier is typed in another way too. */
export const qualifierList = defineFinding({
  code: 'schema-qualifier-list',
  severity: 'fault',
  title: 'The pairs of a qualifier would have two meanings.',
  rationale:
    'Behind a mineral they would say more of it, elsewhere something else: a space or a word left out changes what is logged.',
});

/** Raised where an event lies outside of its row or its limits. */
export const rowEventOff = defineFinding({
  code: 'row-event-off',
  severity: 'fault',
  title: 'An event is outside of its row, or measured outside of its limits.',
  rationale: 'It would be drawn where it is not, or with a figure that no one could have read.',
});

/** Raised where a field of events carries or is required. */
export const eventCarries = defineFinding({
  code: 'schema-event-carries',
  severity: 'fault',
  title: 'Events are set to carry or to be required.',
  rationale: 'A water strike is at one depth: carried, it would be struck again in every row below.',
});

/** Raised where a project has more single keys than can stand apart. */
export const tooManyKeys = defineFinding({
  code: 'schema-too-many-keys',
  severity: 'warning',
  title: 'There are more single keys than can be apart on a keyboard.',
  rationale:
    'At most nine letters of a keyboard have no neighbour among themselves. With more, one slip types another key.',
});

/** Raised where an unlikely pair asks something that is not there, or in a way that has no answer. */
export const unlikelyUntellable = defineFinding({
  code: 'schema-unlikely-untellable',
  severity: 'fault',
  title: 'An unlikely pair asks what can never be decided.',
  rationale: 'It would never be found, and someone relies on it to be.',
});

/** Raised where leaving a field unsaid means none, and none can’t be said of it. */
export const unsaidNone = defineFinding({
  code: 'schema-unsaid-none',
  severity: 'fault',
  title: 'Unsaid means none for a field that always is something.',
  rationale: 'A rock is never none. The row would hold what no one could see.',
});
