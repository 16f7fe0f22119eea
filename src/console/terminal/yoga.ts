import { loadYoga, type Yoga } from 'yoga-layout/load';

/**
 * The bundle gives Ink this module as its layout engine. The engine's own module awaits its WebAssembly at top level, which a CommonJS
 * bundle can't: here it's filled in once `yogaReady` is settled, which is awaited before anything is mounted.
 */
const yoga = {} as Yoga;
export default yoga;
export const yogaReady: Promise<unknown> = loadYoga().then((loaded) => Object.assign(yoga, loaded));
