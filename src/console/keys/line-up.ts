import { goBack, goOn, scrollStep } from '../line-up/line-up.ts';
import type { Binding } from './binding.ts';

/** Keys of the line-up. */
export const LINE_UP_KEYS: readonly Binding[] = [
  {
    name: 'go on',
    on: ['line-up'],
    keys: ['enter'],
    hint: 'go on',
    help: 'Take what is typed and go on; at the end decide on the line-up',
    act: goOn,
  },
  {
    name: 'step back',
    on: ['line-up'],
    keys: ['escape', 'up'],
    hint: 'step back',
    help: 'Back a step, from the first one to the log; nothing is lost',
    act: goBack,
  },
  {
    name: 'words down',
    on: ['line-up'],
    keys: ['page-down'],
    hint: 'more words',
    help: 'Words of the step that are below',
    act: scrollStep(5),
  },
  {
    name: 'words up',
    on: ['line-up'],
    keys: ['page-up'],
    help: 'Words of the step that are above',
    act: scrollStep(-5),
  },
];
