/**
 * Cautions that every project starts with, in the order they are read before a line-up: common practice around an RC rig. The site adds its
 * own; its procedures come first in all of them. Each is short enough that all of them are on a small screen at once: what has to be paged
 * for is not read.
 */
export const USUAL_CAUTIONS: readonly string[] = [
  'Reading this is not an induction. Site procedures come first.',
  'Only the driller moves or stops the rig, or takes you into its zone.',
  'Hoses whip: stay out of their line. A blockage holds pressure: stay off.',
  'Splitter and cyclone: only when the driller confirms that rotation is stopped, air is off and bled, and site isolation is done.',
  'Rods swing and drop: stay clear. Bulk bags weigh 30 to 40 kg: two people.',
  'Dust can hold silica and fibre: stay upwind, mask on. Noise: ears covered.',
  'Powerlines: look up. Lightning: leave the mast, as site procedures say.',
  'Heat, cold, fatigue: water, layers, breaks; say so when you are tired.',
  'Working alone, driving: never without a check-in. Belt on, lights on.',
  'Open collars, sumps, edges: look where you walk, cap what you leave.',
  'Know the emergency stop and the muster point. In doubt, stop and say so.',
];
