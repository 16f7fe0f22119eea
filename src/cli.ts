import { type ConsoleAsked, runCommandLine } from './commands/command-line/run.ts';
import { clockFault, realOutside } from './commands/outside.ts';
import { EXIT, refuse, sayTrouble } from './commands/say.ts';
import { setupColour } from './console/terminal/paint/colour.ts';
import type { Outside } from './desk/outside.ts';
import { safeLines, safeText } from './finding/safe-text.ts';

const CLEARED_LINE = '\r\u001b[2K';

let consoleIsUp = (): void => {};
/** Settles when the console is about to paint for the first time; never in a command. */
export const consoleUp = new Promise<void>((resolve) => {
  consoleIsUp = resolve;
});

/** The console, where there is a terminal to paint on and keys to read; else the state as text. */
async function openConsole(outside: Outside, asked: ConsoleAsked): Promise<number> {
  // Data is for another program: it is printed, and no console opened.
  const isTerminal = !asked.json && outside.stdin.isTTY === true && outside.stdout.isTTY === true;
  // Reading a project takes a moment: something is seen at once, on a line that is cleared again.
  if (isTerminal) outside.stdout.write(`Opening ${safeText(asked.folder)} …`);
  const { openProject } = await import('./commands/at-project.ts');
  const opened = await openProject(outside, { ...asked, write: isTerminal && !asked.readOnly });
  if (isTerminal) outside.stdout.write(CLEARED_LINE);
  if (!opened.ok) return refuse(outside, ...opened.findings);
  const at = opened.value;
  if (!isTerminal) {
    const { printState } = await import('./commands/state.ts');
    return printState(at);
  }
  setupColour(process.env);
  const [{ runConsole }, { describeEnding }, { rigNamed }] = await Promise.all([
    import('./console/terminal/start.tsx'),
    import('./console/terminal/paint/ending.ts'),
    import('./commands/rig-named.ts'),
  ]);
  const rig = rigNamed(at.project, asked.rig);
  if (!rig.ok) {
    await at.desk.close();
    return refuse(outside, ...rig.findings);
  }
  const running = runConsole({
    desk: at.desk,
    loaded: { project: at.project, warnings: at.warnings },
    rig: rig.value,
    ...(asked.readOnly ? { readOnly: 'opened to read only' } : {}),
    stdin: process.stdin,
    stdout: process.stdout,
    env: process.env,
  });
  consoleIsUp();
  const { ending, problem } = await running;
  const last = describeEnding(ending);
  if (last.message !== undefined) process.stderr.write(`${safeLines(last.message)}\n`);
  if (problem !== undefined) process.stderr.write(`Not everything is saved: ${safeText(problem)}\n`);
  if (last.raise !== undefined) process.kill(process.pid, last.raise);
  return problem === undefined ? last.exitCode : EXIT.findings;
}

// A reader that has seen enough (head, less) is not a fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(EXIT.fine);
  throw error;
});

const outside = realOutside(process);
const badClock = clockFault(process.env);
// No await here: the bundle is CommonJS.
(badClock === undefined
  ? runCommandLine(process.argv.slice(2), { outside, openConsole })
  : Promise.resolve(refuse(outside, badClock))
).then(
  (code) => {
    process.exitCode = code;
  },
  (error) => {
    sayTrouble(outside, { bug: error });
    process.exitCode = EXIT.bug;
  },
);
