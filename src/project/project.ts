import { ok, type Result } from '../finding/finding.ts';
import { resolveSampling, type Sampling } from '../sampling/sampling.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import type { ProjectSettings } from './settings.ts';

/** A project as the program uses it: the settings as written, the logging schema with its inheritance resolved, sampling in millimetres. */
export interface Project {
  readonly settings: ProjectSettings;
  readonly schema: LoggingSchema;
  readonly sampling: Sampling;
}

/** The project of its settings and its schema; refused where the settings do not hold together. */
export function resolveProject(settings: ProjectSettings, schema: LoggingSchema): Result<Project> {
  const sampling = resolveSampling(settings.sampling);
  return sampling.ok ? ok({ settings, schema, sampling: sampling.value }) : sampling;
}
