import type { Thing } from '../../record/document.ts';
import type { Collar, Header, Plan } from '../header.ts';
import type { Made, Maker } from './made.ts';

/** A hole of the program, or one made on the rig: its header, its plan where it has one, its planned collar. */
export function planHole(
  given: { readonly header: Header; readonly plan?: Plan; readonly collar?: Collar },
  maker: Maker,
): Made {
  return {
    what: given.header.unplanned
      ? `hole ${given.header.name} made on the rig`
      : `hole ${given.header.name} planned`,
    changes: [
      { put: ['hole', 'hole'], thing: given.header as Thing },
      ...(given.plan === undefined ? [] : [{ put: ['plan', 'plan'] as const, thing: given.plan as Thing }]),
      ...(given.collar === undefined
        ? []
        : [{ put: ['collars', maker.newId()] as const, thing: given.collar as Thing }]),
    ],
  };
}
