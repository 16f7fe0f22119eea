import { defineFinding } from '../finding/finding.ts';

const DIP_SIGN =
  'Dip is counted from horizontal, negative downwards: a vertical hole is -90. Some tools and sheets count upwards, or from vertical, and the ' +
  'number alone does not say which.';

const EXPECTED_DEPTHS =
  'The plan is a model of the ground. A contact that comes metres off, or not at all, means that the model is wrong, or that the hole is not ' +
  'where it is thought to be; either way the rest of the plan hangs on it.';

const WEAK_FIELD =
  'A compass follows the horizontal part of the field. Near the magnetic poles that part is weak: the World Magnetic Model names under ' +
  '2,000 nT a blackout zone and under 6,000 nT a zone of caution.';

export const azimuthOffCircle = defineFinding({
  code: 'survey-azimuth-off-circle',
  severity: 'fault',
  title: 'An azimuth is not a number from 0 to 360.',
  rationale:
    'A circle ends at 360°. A number beyond it is a slipped digit, and quietly folding it back (365 to 5) would turn the slip into a ' +
    'good-looking azimuth.',
});

export const backBearingGiven = defineFinding({
  code: 'survey-back-bearing',
  severity: 'fault',
  title: 'An azimuth is the back-bearing of the hole.',
  rationale:
    'Sighted from the wrong end, or with the tool turned about, the azimuth comes out 180° round. The numbers look like any others and the ' +
    'hole is drawn going the opposite way.',
});

export const collarFixPoor = defineFinding({
  code: 'survey-collar-fix-poor',
  severity: 'warning',
  title: 'A GPS fix of the collar is too poor to judge by.',
  rationale:
    'A few satellites beside a mast can put a rig that is on its peg 30 m off it. Asking for the right peg then sends people to look for a ' +
    'mistake that no one made, or hides one.',
});

export const collarOffPlan = defineFinding({
  code: 'survey-collar-off-plan',
  severity: 'warning',
  title: 'The collar as drilled is not where it was planned.',
  rationale:
    'A peg moved for the pad, or the wrong peg, moves the whole hole by the same metres. It is cheap to see before drilling, and a ' +
    'handheld fix is enough to see it.',
});

export const collarOffProgram = defineFinding({
  code: 'survey-collar-off-program',
  severity: 'fault',
  title: 'A collar is far from every planned one.',
  rationale:
    'East and north swapped, a neighbouring zone, feet for metres or a lost digit all give coordinates that look like coordinates. Held ' +
    'against the program they are kilometres away.',
});

export const compassDistances = defineFinding({
  code: 'survey-compass-distances',
  severity: 'fault',
  title: 'Compass readings at two distances are missing or disagree.',
  rationale:
    'The steel of a rig draws a compass, less the further away it is. Readings that change with distance are still being drawn, and ' +
    'one distance alone cannot show it.',
});

export const compassMagneticGround = defineFinding({
  code: 'survey-compass-magnetic-ground',
  severity: 'fault',
  title: 'A compass is the only check in magnetic ground.',
  rationale:
    'Ground that draws a compass draws it alike at any distance from the rig, so that readings agree and are all wrong together.',
});

export const declinationOffModel = defineFinding({
  code: 'survey-declination-off-model',
  severity: 'fault',
  title: "The project's declination is not that of the World Magnetic Model.",
  rationale:
    'Every magnetic azimuth of the project is turned by it. The model is good to about half a degree where the ground is not magnetic; a ' +
    'degree more is an old map or a slipped digit, and the wrong sign turns each hole by twice the declination.',
});

export const declinationSlip = defineFinding({
  code: 'survey-declination-slip',
  severity: 'warning',
  title: 'All azimuths of a run are off by the declination, or by twice as much.',
  rationale:
    'Some tools give true azimuths already, some are set to do so and no one remembers. Declination put in twice, left out or of the wrong ' +
    'sign turns the whole run by the same angle, and within the run nothing looks wrong.',
});

export const depthSlip = defineFinding({
  code: 'survey-depth-slip',
  severity: 'warning',
  title: 'A depth of a shot looks slipped: two digits swapped, or feet.',
  rationale:
    'A shot at the wrong depth bends the hole where it does not bend. 24 for 42 and feet for metres are depths like any other; only the ' +
    'steps from shot to shot show them.',
});

export const dipUpwards = defineFinding({
  code: 'survey-dip-upwards',
  severity: 'fault',
  title: 'A dip points upwards.',
  rationale: DIP_SIGN,
});

export const dipFromVertical = defineFinding({
  code: 'survey-dip-from-vertical',
  severity: 'warning',
  title: 'A dip looks like an inclination from vertical.',
  rationale: DIP_SIGN,
});

export const expectedOff = defineFinding({
  code: 'survey-expected-off',
  severity: 'warning',
  title: 'A contact or zone of the plan was logged far from where it should come.',
  rationale: EXPECTED_DEPTHS,
});

export const expectedNotSeen = defineFinding({
  code: 'survey-expected-not-seen',
  severity: 'warning',
  title: 'The log has passed a contact or zone of the plan without seeing it.',
  rationale: EXPECTED_DEPTHS,
});

/** Raised where a grid is read from the project's settings. */
export const gridUnreadable = defineFinding({
  code: 'survey-grid-unreadable',
  severity: 'fault',
  title: "The project's map grid can't be used.",
  rationale:
    'Grid azimuths and positions hang on the grid. A wrong unit, a missing datum shift or a misread projection moves every ' +
    'hole, and each still looks well placed among the others.',
});

export const shotAlone = defineFinding({
  code: 'survey-shot-alone',
  severity: 'warning',
  title: 'One shot points away from the line that the shots above and below it keep.',
  rationale:
    'A hole does not turn away and come back within two shots: a digit was misread, or the reading was disturbed. The shots on either side are good.',
});

export const jump = defineFinding({
  code: 'survey-jump',
  severity: 'warning',
  title: 'The hole bends more sharply between two stations than rods bend.',
  rationale:
    'Rods are stiff. A sudden change of direction is far more often a wrong digit or a bad shot than a bent hole, and when it is real the ' +
    'driller needs to know.',
});

export const magneticFieldOff = defineFinding({
  code: 'survey-magnetic-field',
  severity: 'warning',
  title: "The field a tool measured is not the Earth's.",
  rationale:
    'A magnetic tool that feels more than the Earth (rods, casing, magnetite) gives a false azimuth. The strength and the dip of the field it ' +
    'felt, compared with the World Magnetic Model, show it.',
});

export const magneticInSteel = defineFinding({
  code: 'survey-magnetic-in-steel',
  severity: 'warning',
  title: 'A magnetic azimuth was taken inside or near steel.',
  rationale:
    'Steel draws a magnetic sensor. Inside the rods, or too near the bit or the hammer, its azimuth means nothing, while its dip comes from ' +
    'gravity and is kept.',
});

/** Raised where the declination is asked for a date no carried model covers. */
export const magneticModelOutOfDate = defineFinding({
  code: 'survey-magnetic-model-out-of-date',
  severity: 'fault',
  title: 'No World Magnetic Model covers the date.',
  rationale:
    'Magnetic north moves, and a model is good for five years. A declination taken outside its years is wrong by an amount no one ' +
    'knows, and turns every magnetic azimuth with it.',
});

export const mastDip = defineFinding({
  code: 'survey-mast-dip',
  severity: 'warning',
  title: 'The dip of the mast was not checked, or the check disagrees.',
  rationale:
    'The crew sets the mast by its own gauge. A gauge that has been knocked reads the same wrong dip hole after hole; only a second ' +
    'clinometer shows it.',
});

export const gyroDrift = defineFinding({
  code: 'survey-gyro-drift',
  severity: 'warning',
  title: 'A gyro drifts: its runs in and out part towards the collar.',
  rationale:
    'What a gyro drifts on the way in it goes on drifting on the way out. The two agree at the bottom and differ most at the collar, where ' +
    'the in run is the better one; the mean of both is wrong all the way.',
});

export const gyroMisaligned = defineFinding({
  code: 'survey-gyro-misaligned',
  severity: 'warning',
  title: 'A gyro aligned at the collar was aligned to the wrong direction.',
  rationale:
    'Such a gyro measures how the hole turns, not where north is: what it was told at the collar is carried to the bottom. Only something ' +
    'that finds north by itself, or the line-up, shows it.',
});

export const lineUpOff = defineFinding({
  code: 'survey-line-up-off',
  severity: 'warning',
  title: 'The line-up is not where the hole was measured to go.',
  rationale:
    'Runs that find north by themselves agree and the line-up does not: the rig was moved, a peg was the wrong one, or a compass was drawn. ' +
    'The first metres of the hole, and every gyro that was aligned to it, are wrong with it.',
});

export const magneticDipSign = defineFinding({
  code: 'survey-magnetic-dip-sign',
  severity: 'warning',
  title: "A magnetic dip has the Earth's size and the other sign.",
  rationale:
    'South of the magnetic equator the field points up and its dip is negative; many tools and sheets leave the sign off. The shot is sound, ' +
    'and would be thrown out for a slip of the pen.',
});

export const northSlip = defineFinding({
  code: 'survey-north-slip',
  severity: 'warning',
  title: 'All azimuths of a run look counted from another north than recorded.',
  rationale:
    'Grid for true, true for grid or a gyro recorded as magnetic turns a whole run by one angle. The run looks sound by itself and every ' +
    'position below the collar is wrong.',
});

export const runsDisagree = defineFinding({
  code: 'survey-runs-disagree',
  severity: 'warning',
  title: 'A run is off what everything else says of the hole.',
  rationale:
    'Two tools in one hole should read the same to their own errors. When a whole run is off by more, something is wrong with it, even ' +
    'where the amount fits none of the usual slips.',
});

/** Raised where a mine grid is made from two common points. */
export const mineGridUnsound = defineFinding({
  code: 'survey-mine-grid-unsound',
  severity: 'fault',
  title: "The common points don't fix the mine grid.",
  rationale:
    'Two pegs known in both grids fix the mine grid. When they lie close together, or their distance differs between the grids, the ' +
    'grid they give is turned or stretched, and so is every hole in it.',
});

export const misclose = defineFinding({
  code: 'survey-misclose',
  severity: 'warning',
  title: 'Two runs over the same metres disagree.',
  rationale:
    'Two runs over the same metres should read the same, to the errors of their tools. Where they do not, one of them is wrong there, and ' +
    'neither shows it by itself.',
});

export const northUnknown = defineFinding({
  code: 'survey-north-not-known',
  severity: 'fault',
  title: "Azimuths can't be turned to the north that the path is counted from.",
  rationale:
    'An azimuth without the angle from its north to the grid has no place on the map. Used as it is it would turn the hole by ' +
    'the declination, the convergence, or both.',
});

/** Raised where a shot is typed or read whose dip or depth can be none. */
export const offScale = defineFinding({
  code: 'survey-off-scale',
  severity: 'fault',
  title: 'A dip or a depth is off its scale.',
  rationale:
    'No hole dips beyond vertical and none of ours is kilometres deep. Such a number is a typing slip or a wrong column, and is held back ' +
    'before it becomes a shot.',
});

export const shotBelowDrilled = defineFinding({
  code: 'survey-shot-below-drilled',
  severity: 'fault',
  title: 'A shot is deeper than the hole.',
  rationale:
    'A tool reaches no further than the bit has been. A depth below it is a wrong digit, a wrong hole, feet for metres, or the bit depth ' +
    'without the tool offset.',
});

export const shotGap = defineFinding({
  code: 'survey-shot-gap',
  severity: 'warning',
  title: 'Too many metres without a shot.',
  rationale:
    'Between shots the path is a smooth guess. A hole that wanders inside a long gap comes out of it in the wrong place, and nothing in ' +
    'the data shows it.',
});

export const shotOrder = defineFinding({
  code: 'survey-shot-order',
  severity: 'warning',
  title: 'A shot is out of order of depth in its run.',
  rationale:
    'A tool goes one way through the hole. A depth that goes back on itself is nearly always a slip of a digit, and it bends the path ' +
    'twice.',
});

/** Raised by the path itself when its stations give none. */
export const stationsUnusable = defineFinding({
  code: 'survey-stations-unusable',
  severity: 'fault',
  title: 'The stations of a hole give no path.',
  rationale:
    'A path needs a direction at every station, in order of depth and counted from one north. Positions made from anything ' +
    'else look as good as right ones.',
});

/** Raised where shots or collars are read from a table. */
export const tableUnreadable = defineFinding({
  code: 'survey-table-unreadable',
  severity: 'fault',
  title: 'A table of shots, collars or logged intervals holds something that can’t be read.',
  rationale:
    'A column under another name, or a cell that is not a number, would be left out or read as zero by a lazier reader, and a shot at zero ' +
    'degrees looks like any other.',
});

export const compassBlackout = defineFinding({
  code: 'survey-compass-blackout',
  severity: 'fault',
  title: 'A compass is unusable here.',
  rationale: WEAK_FIELD,
});

export const compassCaution = defineFinding({
  code: 'survey-compass-caution',
  severity: 'warning',
  title: 'A compass is weak here.',
  rationale: WEAK_FIELD,
});
