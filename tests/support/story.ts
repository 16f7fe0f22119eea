import { afterEach, beforeEach } from 'vitest';

/** Makes the tests of a file one story: each goes on where the one before left the console, so none begins behind one that failed. */
export function tellOneStory(): void {
  let stoppedAt: string | undefined;
  beforeEach(() => {
    if (stoppedAt !== undefined) throw new Error(`the story stopped before: ${stoppedAt}`);
  });
  afterEach(({ task }) => {
    if (task.result?.state === 'fail') stoppedAt ??= task.name;
  });
}
