/** A process that isn't stopped by SIGTSTP within this time, in ms, can't be: no one is there to continue it. */
const stopGrace = 250;

/** What suspending needs: giving the screen back, and taking it again. */
export interface SuspensionOptions {
  readonly giveBack: () => void;
  readonly takeAgain: () => void;
}

/** Suspending and continuing, while the screen is up. */
export interface Suspension {
  /** Gives the screen back and stops the process, as Ctrl-Z does for others. */
  suspend(): void;
  isSuspended(): boolean;
  /** Stops listening for SIGTSTP and SIGCONT. */
  stop(): void;
}

/** Suspends the process on SIGTSTP, and takes the screen again on SIGCONT. Windows has neither: nothing happens there. */
export function watchSuspension({ giveBack, takeAgain }: SuspensionOptions): Suspension {
  const canSuspend = process.platform !== 'win32';
  let suspended = false;
  let timer: NodeJS.Timeout | undefined;

  const suspend = () => {
    if (suspended || !canSuspend) return;
    suspended = true;
    giveBack();
    // The default action stops the process; a group without a shell to continue it ignores the signal: then come back by ourselves.
    process.off('SIGTSTP', suspend);
    process.kill(process.pid, 'SIGTSTP');
    timer = setTimeout(resume, stopGrace);
  };
  const resume = () => {
    clearTimeout(timer);
    if (!suspended) return;
    suspended = false;
    process.on('SIGTSTP', suspend);
    takeAgain();
  };
  const continued = () => {
    if (suspended) return resume();
    // After a SIGSTOP nothing could be given back, but the shell may have changed every mode meanwhile.
    giveBack();
    takeAgain();
  };

  if (canSuspend) process.on('SIGTSTP', suspend).on('SIGCONT', continued);
  return {
    suspend,
    isSuspended: () => suspended,
    stop() {
      clearTimeout(timer);
      process.off('SIGTSTP', suspend).off('SIGCONT', continued);
    },
  };
}
