import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { declinationOffModel } from '../findings.ts';
import type { MagneticField } from '../norths/declination.ts';
import { formatEastWest } from '../norths/norths.ts';

/** More than this apart the project's declination and the model's can't both be right, degrees: the model is good to about half of it. */
const APART_DEG = 1;
/** A declination of the other sign is named so only where it is this near to the model's with its sign turned, degrees. */
const TURNED_DEG = 1.5;

/** The declination that a project insists on, degrees east positive, against the model's at a collar and date. */
export function checkDeclinationOfProject(
  projectDeg: number,
  field: MagneticField,
  place: Place,
): readonly Finding[] {
  const apart = Math.abs(projectDeg - field.declinationDeg);
  if (apart <= APART_DEG) return [];
  const turned =
    projectDeg * field.declinationDeg < 0 && Math.abs(projectDeg + field.declinationDeg) <= TURNED_DEG;
  return [
    declinationOffModel.at(
      { ...place, file: 'project.json', field: 'declination' },
      {
        excerpt: `project ${formatEastWest(projectDeg)}, ${field.model} ${formatEastWest(field.declinationDeg)}`,
        problem: turned
          ? 'the declination of the project has the wrong sign'
          : `the declination of the project is ${apart.toFixed(1)}° off the model's`,
        remedy: `East is positive, west negative. ${turned ? 'Turn its sign' : 'Check it and its date'}, or leave it out: the model's is then used.`,
      },
    ),
  ];
}
