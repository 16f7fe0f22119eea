import { addCodeOnRig, changeCodeOnRig, changeFieldOnRig } from '../../desk/add-code.ts';
import type { Received } from '../../desk/arriving/receive-files.ts';
import type { Desk } from '../../desk/desk.ts';
import type { LoadedProject } from '../../desk/load-project.ts';
import { type PackAsked, packNamed } from '../../desk/packing/pack-named.ts';
import { readGps } from '../../files/read-gps.ts';
import { realDisk } from '../../files/real-disk.ts';
import { typedPath } from '../../files/typed-path.ts';
import type { Finding } from '../../finding/finding.ts';
import type { Project } from '../../project/project.ts';
import type { CodeChange } from '../../schema/change/edit-code.ts';
import type { FieldChange } from '../../schema/change/edit-field.ts';
import type { CodeEntry } from '../../schema/read/file-entries.ts';
import { healthOf } from '../desk-health.ts';
import { foundOn } from '../found.ts';
import { perform } from '../perform.ts';
import type { Happening } from '../reduce.ts';
import { isTooSmall, screenLines, settled } from '../screens/screen.ts';
import { initialState, type State } from '../state.ts';
import { createConsoleStore } from '../store.ts';
import { themeFor } from '../theme.ts';
import { Frame } from '../widgets/frame.tsx';
import { type Mounted, mount } from './mount.tsx';
import { looksOf } from './paint/colour.ts';
import type { Ending } from './paint/ending.ts';
import type { Size } from './paint/painter.ts';
import { yogaReady } from './yoga.ts';

/** What the console is started with: an open desk, its project, and the terminal. */
export interface ConsoleOptions {
  readonly desk: Desk;
  readonly loaded: LoadedProject;
  readonly rig: string;
  readonly readOnly?: string;
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream & { readonly fd: number };
  readonly env: Record<string, string | undefined>;
}

/** Runs the console until it is left, whatever the reason; the desk is closed by then, and the terminal given back. */
export async function runConsole(
  options: ConsoleOptions,
): Promise<{ readonly ending: Ending; readonly problem?: string }> {
  const { desk } = options;
  await yogaReady;
  const theme = themeFor(looksOf(options.env));
  let screen: Mounted | undefined;
  let shown: Size = { columns: options.stdout.columns, rows: options.stdout.rows - 1 };
  const host = {
    desk,
    leave: () => queueMicrotask(() => screen?.stop()),
    suspend: () => screen?.suspend(),
    repaint: () => queueMicrotask(() => screen?.repaint()),
    addCode: (list: string, entry: CodeEntry) => addCodeOnRig(desk, list, entry),
    changeField: (field: string, change: FieldChange) => changeFieldOnRig(desk, field, change),
    changeCode: (list: string, code: string, change: CodeChange) => changeCodeOnRig(desk, list, code, change),
    pack: (project: Project, asked: PackAsked) => packNamed(desk, project, asked),
    receive: async (project: Project, file: string, mayClear: boolean) => {
      // Mails and archives are read by parts that a console seldom needs.
      const { receiveFiles } = await import('../../desk/arriving/receive-files.ts');
      const received: Received[] = [];
      const at = { desk, project, disk: realDisk, mayClear };
      await receiveFiles(at, [file], (each) => received.push(each));
      return received;
    },
    folderTyped: typedPath,
    readGps: (path: string) => readGps(typedPath(path)),
    happen: (happening: Happening) => happen(happening),
  };
  const found = foundOn(desk, options.loaded);
  const console = createConsoleStore(firstState(options, found()), {
    newId: desk.newId,
    now: desk.now,
    perform: (state, effect) => perform(state, effect, host),
    settle: (state) => settled(state, shown, theme),
    canBeSeen: () => !isTooSmall(shown),
    later: (run) =>
      setImmediate(() => {
        run();
        screen?.rerender();
      }),
  });
  screen = mount({
    stdin: options.stdin,
    stdout: options.stdout,
    render: (size: Size) => {
      shown = size;
      return <Frame lines={screenLines(console.store.getState(), size, theme)} theme={theme} />;
    },
    onEvents: (events) => {
      console.keys(events);
      screen?.rerender();
    },
  });
  const happen = (happening: Happening): void => {
    console.happen(happening);
    screen?.rerender();
  };
  const watching = keepWatching(desk);
  const unsubscribe = desk.subscribe(() => {
    watching.follow();
    followDesk(desk, found(), console.store.getState(), happen);
  });
  const stopClock = everyMinute(desk, () => {
    happen({ kind: 'minute', now: desk.now() });
    // For disks that can't tell of changes, like a share.
    void desk.look();
  });
  const left = await screen.ended;
  stopClock();
  watching.stop();
  unsubscribe();
  const closed = await desk.close({ abandon: true, keep: true });
  const late = screen.release();
  const ending: Ending =
    late !== undefined && left.kind === 'stopped' ? { kind: 'error', error: late } : left;
  return closed.ok ? { ending } : { ending, problem: closed.problem };
}

function firstState({ desk, loaded, rig, readOnly }: ConsoleOptions, found: readonly Finding[]): State {
  return initialState({
    project: loaded.project,
    documents: desk.documents(),
    person: desk.person,
    rig,
    now: desk.now(),
    readOnly,
    found,
  });
}

/** What the desk has to say since the state was published: things found of the files, and whether all is saved. */
function followDesk(
  desk: Desk,
  found: readonly Finding[],
  state: State,
  happen: (happening: Happening) => void,
): void {
  if (found !== state.found) happen({ kind: 'found', found });
  const health = healthOf(desk, state.health);
  if (health !== state.health) happen({ kind: 'health', health });
}

/** Watches the desk's files, in whatever folder it works by now. */
function keepWatching(desk: Desk): { readonly follow: () => void; readonly stop: () => void } {
  let folder = desk.folder();
  let stop = desk.watch();
  const follow = (): void => {
    if (desk.folder() === folder) return;
    stop();
    folder = desk.folder();
    stop = desk.watch();
  };
  return { follow, stop: () => stop() };
}

/** Calls at each full minute of the clock: the only thing that repaints an idle console. */
function everyMinute(desk: Desk, tick: () => void): () => void {
  let timer: NodeJS.Timeout;
  const next = (): void => {
    const seconds = Number(desk.now().slice(17, 19));
    timer = setTimeout(
      () => {
        tick();
        next();
      },
      (60 - seconds) * 1000 + 50,
    );
  };
  next();
  return () => clearTimeout(timer);
}
