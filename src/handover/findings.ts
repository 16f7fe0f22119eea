import { defineFinding } from '../finding/finding.ts';

/** An archive is damaged, or is none. */
export const archiveUnreadable = defineFinding({
  code: 'archive-unreadable',
  severity: 'fault',
  title: 'An archive is damaged or is none of ours.',
  rationale: 'Half a bundle taken for all of it would leave rows out silently.',
});

/** An archive holds what no bundle of ours holds. */
export const archiveUnsafe = defineFinding({
  code: 'archive-unsafe',
  severity: 'fault',
  title: 'An archive holds what offsider never packs.',
  rationale:
    'A name that climbs out of a folder, a link or a file that inflates without end does harm when it is unpacked.',
});

/** What a bundle holds is not what its manifest says. */
export const bundleAltered = defineFinding({
  code: 'bundle-altered',
  severity: 'fault',
  title: 'A bundle is not as it was packed.',
  rationale: 'A file that was swapped or lost on the way must not pass for what the rig sent.',
});

/** A project is to begin with what a bundle brings, and it does not bring enough. */
export const noBeginning = defineFinding({
  code: 'no-beginning',
  severity: 'fault',
  title: 'No project can begin with what came.',
  rationale:
    'The settings and the schema decode every hole: without both, what came could be kept and not be read.',
});

/** A bundle was packed in another project. */
export const bundleOfAnother = defineFinding({
  code: 'bundle-of-another-project',
  severity: 'fault',
  title: 'A bundle belongs to another project.',
  rationale:
    'Holes of one project taken into another would be logged and sampled on under its codes and bag numbers.',
});
