import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const text = (file: string): string => readFileSync(join(import.meta.dirname, file), 'utf8');

/** The project of the whole hole, files by path: its own settings, so that the sample project is free to change. */
export const WHOLE_HOLE_PROJECT = {
  'project.json': text('project.json'),
  'logging.json': text('logging.json'),
} as const;
