import { defineFinding } from '../finding/finding.ts';

/** Raised when the issued bags of a hole are compared with its bag runs. */
export const bagElsewhere = defineFinding({
  code: 'bag-not-of-this-hole',
  severity: 'fault',
  title: 'A bag was issued in a hole that its number was not labelled for.',
  rationale: 'It is another hole’s bag, left on the splitter, and that hole will need its number.',
});

/** Raised when bag runs are checked. */
export const runBackwards = defineFinding({
  code: 'bag-run-backwards',
  severity: 'fault',
  title: 'A bag run holds no numbers.',
  rationale:
    'Its first and last number are of two prefixes, of another form, or the wrong way round, so no bag can come from it.',
});

/** Raised when bag runs are checked against the blocks. */
export const runOutside = defineFinding({
  code: 'bag-run-outside',
  severity: 'warning',
  title: 'A bag run is outside the numbers of its rig.',
  rationale: 'The numbers may be another rig’s, on its way to using them too.',
});

/** Raised when the bag runs of all holes are checked together. */
export const runOverlap = defineFinding({
  code: 'bag-run-overlap',
  severity: 'fault',
  title: 'Numbers are labelled for two holes.',
  rationale: 'Both holes would give the same numbers out, and the second bag with a number is worthless.',
});

/** Raised from the sample stream of a hole whose numbers ran out. */
export const metresUnbagged = defineFinding({
  code: 'metres-without-a-bag',
  severity: 'warning',
  title: 'Drilled metres have no bag: the numbers labelled for the hole ran out.',
  rationale:
    'Such a metre lies in its pile and in no list: no one misses its sample until the results are back, and the pile is rained on.',
});

/** Raised from the results of blanks. */
export const blankHigh = defineFinding({
  code: 'blank-high',
  severity: 'warning',
  title: 'A blank shows more than its limit.',
  rationale:
    'What the blank picked up, its neighbours picked up too: carry-over in the cyclone, the splitter or the mill.',
});

/** Raised from the laboratory's own blanks on a certificate. */
export const labBlankHigh = defineFinding({
  code: 'laboratory-blank-high',
  severity: 'warning',
  title: "The laboratory's own blank shows more than its limit.",
  rationale: 'What its own blank picked up came from the samples before it, in the mill or the furnace.',
});

/** Raised from the laboratory's own repeats and duplicates beside their first results. */
export const labPairApart = defineFinding({
  code: 'laboratory-pair-apart',
  severity: 'note',
  title: "The laboratory's own repeat or duplicate is far from the first result.",
  rationale: 'The same pulp read twice shows how far a result can be trusted, before the splitter is blamed.',
});

/** Raised where a repeat of the laboratory's names a sample that no result has. */
export const labRepeatOfNothing = defineFinding({
  code: 'laboratory-repeat-of-nothing',
  severity: 'warning',
  title: "The laboratory's own repeat is of a number that has no result.",
  rationale: 'The mark was read wrongly, or the result that it repeats is missing from the certificate.',
});

/** Raised from the laboratory's own standards on a certificate. */
export const labStandardOff = defineFinding({
  code: 'laboratory-standard-off',
  severity: 'warning',
  title: "The laboratory's own standard reads more than two standard deviations from its value.",
  rationale: 'It is on the certificate because it is part of it: a batch with a failed one is asked about.',
});

/** Raised from the results of blanks that are under a detection limit which lies above the blank's own limit. */
export const blankUntold = defineFinding({
  code: 'blank-untold',
  severity: 'note',
  title: 'A blank is below a detection limit that is above its own limit: whether it is clean can’t be told.',
  rationale: 'A method too coarse to see the smear is not a clean blank.',
});

/** Raised when the issued bags of a hole are compared with the scheme. */
export const controlAsMetre = defineFinding({
  code: 'control-number-as-metre',
  severity: 'warning',
  title: 'A number reserved for a control holds a metre, or the other way round, and no one chose it.',
  rationale:
    'Either the control was forgotten or the stream slipped by one; both show here before the laboratory does.',
});

/** Raised when stock is counted: sachets that came to site less those in issued bags. */
export const controlStock = defineFinding({
  code: 'control-stock',
  severity: 'warning',
  title: 'A control material is used up or nearly.',
  rationale: 'A standard that has run out is a control missed or a metre under its number.',
});

/** Raised when the control scheme is checked. */
export const withoutMaterial = defineFinding({
  code: 'control-without-material',
  severity: 'warning',
  title: 'The scheme asks for a control that the project lists no material for.',
  rationale:
    'The one at the splitter is told to put in a standard and not which, so that the result can’t be compared with anything.',
});

/** Raised where the one who gave the sacks is not the one who took them last. */
export const custodyBroken = defineFinding({
  code: 'custody-broken',
  severity: 'warning',
  title: 'Sacks were handed over and it was not written down.',
  rationale: 'A chain of custody with a gap does not show where the samples were.',
});

/** Raised when a dispatch is made up. A dispatch with a double is refused. */
export const dispatchDouble = defineFinding({
  code: 'dispatch-double',
  severity: 'fault',
  title: 'A bag is in a dispatch twice, or was sent before.',
  rationale: 'A bag can be in one sack only. Either a number is on two bags or the list is wrong.',
});

/** Raised when a dispatch is made up. A dispatch with a gap is refused. */
export const dispatchGap = defineFinding({
  code: 'dispatch-gap',
  severity: 'fault',
  title: 'An issued bag between the first and the last of a dispatch is not in it.',
  rationale: 'A bag left behind is found weeks later, or never; the laboratory can only say what came.',
});

/** Raised when a dispatch is made up. */
export const dispatchNotIssued = defineFinding({
  code: 'dispatch-not-issued',
  severity: 'fault',
  title: 'A bag in a dispatch was never issued, or is spoiled.',
  rationale:
    'What goes to the laboratory has to be known to the record first, or its result belongs to nothing.',
});

/** Raised where a dispatch can't be made up, found or added to as asked. */
export const dispatchRefused = defineFinding({
  code: 'dispatch-refused',
  severity: 'fault',
  title: 'A dispatch cannot be made up or added to as it was asked.',
  rationale: 'Sacks that leave on a guess are looked for when the results are due.',
});

/** Raised from the results of pairs. */
export const duplicateApart = defineFinding({
  code: 'duplicate-apart',
  severity: 'note',
  title: 'A field duplicate and its primary are far apart.',
  rationale: 'Coarse gold does that, and so do swapped bags and a splitter out of level.',
});

/** Raised when the issued bags of a hole are checked. */
export const duplicateTwin = defineFinding({
  code: 'duplicate-not-its-twin',
  severity: 'fault',
  title: 'A field duplicate does not hold the metre of its primary.',
  rationale:
    'The pair is compared to tell how well the splitter splits. Two different metres say nothing about it.',
});

/** Raised when a duplicate is placed, and when the issued bags of a hole are checked. */
export const duplicateWithoutPrimary = defineFinding({
  code: 'duplicate-without-primary',
  severity: 'fault',
  title: 'A field duplicate names no primary sample that it repeats.',
  rationale:
    'A duplicate says something only beside its twin. Without it the pair is lost and so is the bag.',
});

/** Raised by rod. */
export const hygieneNotLooked = defineFinding({
  code: 'hygiene-not-looked',
  severity: 'note',
  title: 'No one recorded whether cyclone and splitter were clean at a rod.',
  rationale: 'What is not recorded can’t be shown later, when a smeared grade is asked about.',
});

/** Raised by rod from what was seen. */
export const hygieneUnclean = defineFinding({
  code: 'hygiene-unclean',
  severity: 'note',
  title: 'Cyclone, splitter or hole was not clean at a rod, or the splitter not level.',
  rationale: 'What is left in the cyclone goes into the next bag; a tilted splitter favours one chute.',
});

/** Raised when a mass is read. */
export const massInGrams = defineFinding({
  code: 'mass-in-grams',
  severity: 'fault',
  title: 'A mass was given in grams where kilograms are asked.',
  rationale: 'A thousand times too much passes for a good recovery in every sum that follows.',
});

/** Raised when a mass is read. */
export const massUnreadable = defineFinding({
  code: 'mass-unreadable',
  severity: 'fault',
  title: 'A mass is not a number of kilograms, or more than such a bag can hold.',
  rationale: 'What can’t be read must not become a figure.',
});

/** Raised when the issued bags of a hole are checked. */
export const metreTwice = defineFinding({
  code: 'metre-bagged-twice',
  severity: 'fault',
  title: 'A metre is in two primary bags of one rank.',
  rationale:
    'Two results would claim to be the metre. One of the two bags is another metre, or a duplicate said to be a primary.',
});

/** Raised from what was seen at the splitter. */
export const metresContaminated = defineFinding({
  code: 'metres-contaminated',
  severity: 'note',
  title: 'A sample was seen to be contaminated.',
  rationale:
    'Chips of another metre are in it: its grade belongs to no metre, and no one can see that later.',
});

/** Raised from the moisture seen at the splitter, where too few follow one another for a wet run. */
export const metresWet = defineFinding({
  code: 'metres-wet',
  severity: 'note',
  title: 'A metre came up wet.',
  rationale: 'A wet sample is worth less than a dry one, and only a flag that stays with it says so.',
});

/** Raised from numbers that are kept for metres of which nothing came up. */
export const metresWithoutSample = defineFinding({
  code: 'metres-without-sample',
  severity: 'note',
  title: 'A metre gave no return, and its number is kept as no sample.',
  rationale: 'Whoever counts the calicos, or misses a result, has to know that there never was one.',
});

/** Raised by rod whose bags did not agree and were recorded as expected. */
export const mismatchUnmended = defineFinding({
  code: 'mismatch-unmended',
  severity: 'warning',
  title: 'A bag mismatch noted at a rod is still open.',
  rationale:
    'The bags from that rod on are recorded as expected, not as they are: every number may be on the wrong metre.',
});

/** Raised when the number blocks of the rigs are checked. */
export const numberBlock = defineFinding({
  code: 'number-block',
  severity: 'fault',
  title: 'A block of bag numbers runs backwards, across prefixes, or over another block.',
  rationale: 'Blocks keep two rigs from giving out the same number. A number is used once, ever.',
});

/** Raised wherever a bag number is read that has not the form of the project's. */
export const numberNotOurs = defineFinding({
  code: 'bag-number-not-ours',
  severity: 'fault',
  title: 'A bag number has not the form that the project gives its numbers.',
  rationale:
    'A number with a digit too many or another prefix is a typing slip or another project’s bag. The laboratory would ' +
    'report it and no one could say which metre it was.',
});

/** Raised when the form of the bag numbers is checked. */
export const numberPrefixes = defineFinding({
  code: 'number-prefixes',
  severity: 'fault',
  title: 'One prefix of the bag numbers is the beginning of another.',
  rationale: 'A number could then be read in two ways, and the last digits could mean either.',
});

/** Raised when the bags of all holes are checked together. */
export const usedTwice = defineFinding({
  code: 'number-used-twice',
  severity: 'fault',
  title: 'A bag number is on more than one bag.',
  rationale:
    'The laboratory gives one result for a number. No one can say afterwards which of the two metres it belongs to.',
});

/** Raised where fewer controls were put out than the rate that is wanted asks for. */
export const rateBehind = defineFinding({
  code: 'rate-behind',
  severity: 'warning',
  title: 'Fewer controls were put out than are wanted.',
  rationale: 'A rate is judged over the whole campaign: what is missing can be made up only while it lasts.',
});

/** Raised when the receipt of the laboratory is compared with the dispatch. */
export const receiptDiffers = defineFinding({
  code: 'receipt-differs',
  severity: 'fault',
  title: 'The laboratory did not receive the bags that were sent.',
  rationale: 'A missing, doubled or strange number is cheap to find while the sacks are still there.',
});

/** Raised where no column of a receipt holds sample numbers. */
export const receiptUnreadable = defineFinding({
  code: 'receipt-unreadable',
  severity: 'fault',
  title: 'A receipt holds no sample numbers.',
  rationale: 'A receipt that is taken for another one says that every bag is lost.',
});

/** Raised by metre from masses. */
export const recoveryHigh = defineFinding({
  code: 'recovery-high',
  severity: 'warning',
  title: 'More came up than the metre holds.',
  rationale: 'The hole is caving, the bit is larger than said, or two metres are in one bag.',
});

/** Raised by metre from masses, or from the visual class where nothing was weighed. */
export const recoveryLow = defineFinding({
  code: 'recovery-low',
  severity: 'note',
  title: 'Less came up than the metre holds.',
  rationale: 'What is lost is seldom a fair part of the rock: fines go first, and the grade goes with them.',
});

/** Raised over all weighed metres of a hole. */
export const recoveryTrendFound = defineFinding({
  code: 'recovery-trend',
  severity: 'note',
  title: 'Recovery falls with depth.',
  rationale: 'A leak, a worn bit or too little air shows as a slope long before a single metre is low.',
});

/** Raised where single metres can't be numbered as asked. */
export const resplitRefused = defineFinding({
  code: 'resplit-refused',
  severity: 'fault',
  title: 'Single metres cannot be numbered as asked.',
  rationale: 'A kept metre without a number of its own is found again only by hole and metre.',
});

/** Raised when a CSV of results is read. */
export const resultColumn = defineFinding({
  code: 'result-column-missing',
  severity: 'fault',
  title: 'A column that the project maps is not in the results.',
  rationale: 'The laboratory changed its layout. Values under a wrong heading look right.',
});

/** Raised where a certificate leaves out numbers between those it reports. */
export const resultMissing = defineFinding({
  code: 'result-missing',
  severity: 'warning',
  title: 'A certificate leaves out numbers between those it reports.',
  rationale: 'A calico that is lost at the laboratory is found while its batch is still there.',
});

/** Raised when results are compared with the issued bags. */
export const resultOfNoBag = defineFinding({
  code: 'result-of-no-bag',
  severity: 'warning',
  title: 'A result has a number that no bag of the project has.',
  rationale: 'The number was misread, or the result is another client’s.',
});

/** Raised where a number has two results that both count. */
export const resultTwice = defineFinding({
  code: 'result-twice',
  severity: 'warning',
  title: 'A sample number has two results.',
  rationale: 'Two calicos may bear one number, or a certificate was issued again and both count.',
});

/** Raised where a unit of results is not the one of the mapping, or can't be converted. */
export const resultUnit = defineFinding({
  code: 'result-unit',
  severity: 'fault',
  title: 'Results are in another unit than the mapping says.',
  rationale: 'Parts per billion read as parts per million make an orebody of nothing.',
});

/** Raised when a CSV of results is read. */
export const resultUnreadable = defineFinding({
  code: 'result-unreadable',
  severity: 'fault',
  title: 'A line of results can’t be read.',
  rationale: 'A result that is guessed at is worse than none.',
});

/** Raised where a certificate can't be taken in as asked. */
export const resultsRefused = defineFinding({
  code: 'results-refused',
  severity: 'fault',
  title: 'A certificate cannot be taken in as it was asked.',
  rationale: 'A certificate in the place of another one changes every figure that rests on it.',
});

/** Raised from rows that stand elsewhere than where they were logged, over metres whose bags are issued. */
export const rowsMoved = defineFinding({
  code: 'rows-moved',
  severity: 'note',
  title: 'Rows were moved, cut, joined or cleared over metres whose bags are issued.',
  rationale:
    'A bag keeps its number and its metre whatever becomes of the log. Where the log was a metre out the bags may be right, or a metre out with it: only whoever lays calicos beside piles can tell.',
});

/** Raised when the rates wanted are compared with those that the slots give. */
export const rateShort = defineFinding({
  code: 'scheme-rate-short',
  severity: 'warning',
  title: 'The control scheme gives fewer controls of a kind than are wanted.',
  rationale:
    'A rate that is asked for and not reached shows when the results are reported, and the holes are drilled by then.',
});

/** Raised when the rates that the slots give are compared with published ones. */
export const rateUnusual = defineFinding({
  code: 'scheme-rate-unusual',
  severity: 'note',
  title: 'A kind of control is rarer than published practice.',
  rationale:
    'Few controls tell little about a batch. Published rates are a guide, not a rule: the project decides.',
});

/** Raised when the control scheme is checked. */
export const reservedTwice = defineFinding({
  code: 'scheme-reserved-twice',
  severity: 'fault',
  title: 'Two slots of the control scheme reserve the same number.',
  rationale:
    'A bag can hold one control. The second of the two would be left out each time, and its rate falls short unseen.',
});

/** Raised when the control scheme is checked. */
export const slotNever = defineFinding({
  code: 'scheme-slot-never',
  severity: 'fault',
  title: 'A slot of the control scheme comes at no number.',
  rationale:
    'A remainder is always smaller than what divides. A slot that never comes looks like a control in the file and is none.',
});

/** Raised when the control scheme is checked. */
export const slotUsual = defineFinding({
  code: 'scheme-slot-usual',
  severity: 'fault',
  title: 'The usual kind of a slot is none of the kinds that it can be.',
  rationale:
    'If no one chooses, the bag is printed and filled as the usual kind, so it has to be one of those allowed.',
});

/** Raised by metre from the mass of the calico. */
export const splitOffTarget = defineFinding({
  code: 'split-off-target',
  severity: 'note',
  title: 'A calico is far from the mass that the split should give.',
  rationale: 'A chute that takes too much or too little is set wrong or partly blocked, and splits unfairly.',
});

/** Raised from the results of certified standards: over 2 SD as a warning in words, over 3 SD as a failure. */
export const standardOff = defineFinding({
  code: 'standard-off',
  severity: 'warning',
  title: 'A standard reads more than two standard deviations from its certified value.',
  rationale:
    'One in twenty does by chance. More than three, or several on one side, is the laboratory’s drift or a wrong sachet.',
});

/** Raised from the results of a standard in the order in which they were reported. Zone tests: Western Electric, Statistical Quality Control Handbook, 1956. */
export const standardRun = defineFinding({
  code: 'standard-run',
  severity: 'warning',
  title: 'Standards one after another are on one side more often than chance allows.',
  rationale: 'A slow drift never fails a single standard and moves every grade.',
});

/** Raised when the counts at each transfer are compared with the dispatch. */
export const transferCount = defineFinding({
  code: 'transfer-count',
  severity: 'warning',
  title: 'The count at a transfer is not the count sent.',
  rationale: 'Bags go missing between two people. The place to ask is the transfer where the count changed.',
});

/** Raised when trays as filled are compared with the project’s compartments. */
export const trayMetres = defineFinding({
  code: 'tray-metres-differ',
  severity: 'warning',
  title: 'A chip tray is recorded with other metres than its place gives it.',
  rationale: 'Chips under the wrong metre make the log wrong for whoever looks again.',
});

/** Raised when the trays of a hole are listed. */
export const trayWithoutPhoto = defineFinding({
  code: 'tray-without-photo',
  severity: 'note',
  title: 'A full chip tray has no photograph.',
  rationale: 'Chips dry, spill and fade. The wet photograph is the only look at them that camp ever gets.',
});

/** Raised from the moisture seen at the splitter. */
export const wetRun = defineFinding({
  code: 'wet-run',
  severity: 'note',
  title: 'Wet metres follow one another.',
  rationale:
    'Wet chips carry over from metre to metre and can’t be split in a riffle. The grades of a wet run smear.',
});
