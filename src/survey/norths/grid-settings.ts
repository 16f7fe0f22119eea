import * as z from 'zod';

const position = z.strictObject({
  eastM: z.number().describe('Easting, metres'),
  northM: z.number().describe('Northing, metres'),
});

/** The project's map grid: a code of the EPSG register, or a name and a proj string. */
export const gridSetting = z
  .union([
    z.strictObject({ epsg: z.int().min(1).describe('Code in the EPSG register, like 7850') }),
    z.strictObject({
      name: z.string().min(1).describe('What the site calls the grid'),
      proj: z.string().min(1).describe('Its definition as a proj string, in metres'),
    }),
  ])
  .describe('The map grid that positions and grid azimuths are in');

/** A point known in both grids. */
const peg = z.strictObject({
  map: position.describe('The point on the map grid'),
  mine: position.describe('The same point in the mine grid'),
});

/** A local mine grid: two pegs known in both grids, or rotation, shift and scale. */
export const mineGridSetting = z
  .union([
    z.strictObject({
      pegs: z.tuple([peg, peg]).describe('Two points known in both grids, as far apart as the site allows'),
    }),
    z.strictObject({
      rotationDeg: z
        .number()
        .min(-360)
        .max(360)
        .describe('Bearing of mine north from map north, degrees, clockwise positive'),
      mapOrigin: position.describe('One point on the map grid'),
      mineOrigin: position.describe('The same point in the mine grid'),
      scale: z.number().min(0.99).max(1.01).optional().describe('Map metres to a mine metre; 1 if left out'),
    }),
  ])
  .describe('The local mine grid');
