import type { Finding } from '../../finding/finding.ts';
import type { Place } from '../../finding/place.ts';
import { collarOffProgram } from '../findings.ts';
import { fromWgs84, type Grid, type MapPosition, metresApart, toWgs84 } from '../norths/grids.ts';
import type { SurveySettings } from '../settings.ts';
import { METRES_PER_FOOT } from './misread-depth.ts';

/**
 * A collar against the nearest planned collar of the program, all in `grid`. When it lies further away than the settings allow,
 * what would bring it back is named: swapped, the next zone, feet.
 */
export function checkCollarOnProgram(
  at: MapPosition,
  program: readonly MapPosition[],
  grid: Grid,
  settings: Pick<SurveySettings, 'programReachM'>,
  place: Place,
): readonly Finding[] {
  const nearest = (one: MapPosition) => Math.min(...program.map((planned) => metresApart(planned, one)));
  const away = nearest(at);
  if (program.length === 0 || away <= settings.programReachM) return [];
  const cause = likelyCauses(at, grid).find(({ as }) => nearest(as) <= settings.programReachM);
  return [
    collarOffProgram.at(place, {
      excerpt: `${at.eastM.toFixed(1)} E, ${at.northM.toFixed(1)} N, ${grid.name}`,
      problem: `the collar is ${distance(away)} from the nearest planned one`,
      remedy:
        cause === undefined
          ? 'Check every digit, the grid and the zone against the GPS.'
          : `Likely ${cause.what}: so taken it is ${distance(nearest(cause.as))} from it. Check and type it again.`,
    }),
  ];
}

function likelyCauses(
  at: MapPosition,
  grid: Grid,
): readonly { readonly what: string; readonly as: MapPosition }[] {
  const feet = { eastM: at.eastM * METRES_PER_FOOT, northM: at.northM * METRES_PER_FOOT };
  return [
    { what: 'east and north swapped', as: { eastM: at.northM, northM: at.eastM } },
    ...neighbourZones(at, grid),
    { what: `feet (× ${METRES_PER_FOOT})`, as: feet },
  ];
}

/** The position as if it had been read in a zone beside the grid's, for grids of the universal transverse Mercator kind. */
function neighbourZones(at: MapPosition, grid: Grid) {
  const zone = /\+proj=utm .*\+zone=(\d+)/.exec(grid.proj)?.[1];
  if (zone === undefined) return [];
  return [-1, 1].flatMap((step) => {
    const other = ((Number(zone) - 1 + step + 60) % 60) + 1;
    const read = toWgs84({ ...grid, proj: grid.proj.replace(`+zone=${zone}`, `+zone=${other}`) }, at);
    const as = read === undefined ? undefined : fromWgs84(grid, read);
    return as === undefined ? [] : [{ what: `zone ${other}, not zone ${zone}`, as }];
  });
}

function distance(m: number): string {
  return m < 10_000 ? `${m.toFixed(0)} m` : `${(m / 1000).toFixed(0)} km`;
}
