import { type AtProject, holesOf, sayFirst } from './at-project.ts';
import { EXIT, say } from './say.ts';
import { stateText } from './state-text.ts';

/** Prints where the project stands: what the console would show, for where there is no terminal. */
export function printState({ outside, desk, project }: AtProject): number {
  const { documents, now } = desk;
  sayFirst(outside, desk.findings());
  say(outside, stateText({ project, documents: documents(), holes: holesOf(desk), now: now() }));
  return EXIT.fine;
}
