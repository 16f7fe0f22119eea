import { packAll, packHindered, packSaid } from '../lists/pack.ts';
import { askFile, receiveSaid } from '../lists/receive.ts';
import { type Binding, HOLE_SCREENS } from './binding.ts';

/** What is packed for camp at the end of a shift, and what is taken in. */
export const PACKING_KEYS: readonly Binding[] = [
  {
    name: 'receive',
    on: [...HOLE_SCREENS, 'holes'],
    keys: [],
    word: 'receive',
    help: 'Take in what came from camp or from another rig, a bundle or a saved mail: ;receive reply.eml. Newer copies are taken, copies that went their own ways are merged, nothing is lost; behind a file that takes much away may clear says that it is meant',
    hindered: packHindered,
    act: askFile,
    told: receiveSaid,
  },
  {
    name: 'pack',
    on: HOLE_SCREENS,
    keys: [],
    word: 'pack',
    help: 'Pack for camp what is new since camp acknowledged: a bundle and a mail draft in the outbox; ;pack ZQRC014 packs one hole, ;pack whole everything in full, ;pack for and someone’s initials: what that copy lacks. Nothing is sent',
    hindered: packHindered,
    act: packAll,
    told: packSaid,
  },
  {
    name: 'pack all holes',
    on: ['holes'],
    keys: ['p'],
    hint: 'pack',
    help: 'Pack for camp all that is new since camp acknowledged: a bundle and a mail draft in the outbox. Nothing is sent',
    hindered: packHindered,
    act: packAll,
  },
];
