import { ok, type Result } from '../finding/finding.ts';
import { resolveSampling, type Sampling } from '../sampling/sampling.ts';
import type { LoggingSchema } from '../schema/logging-schema.ts';
import { resolveShiftRules, type ShiftRules } from '../shift/shift-rules.ts';
import { type SurveySettings, surveySettingsOf } from '../survey/settings.ts';
import type { ProjectSettings } from './settings.ts';

/** A project as the program uses it: the settings as written, the logging schema with its inheritance resolved, each room's part resolved. */
export interface Project {
  readonly settings: ProjectSettings;
  readonly schema: LoggingSchema;
  readonly sampling: Sampling;
  readonly survey: SurveySettings;
  readonly shift: ShiftRules;
}

/** The project of its settings and its schema; refused where the settings do not hold together. */
export function resolveProject(settings: ProjectSettings, schema: LoggingSchema): Result<Project> {
  const sampling = resolveSampling(settings.sampling);
  const shift = resolveShiftRules(settings.shift);
  if (!sampling.ok || !shift.ok) {
    return { ok: false, findings: [sampling, shift].flatMap((each) => (each.ok ? [] : each.findings)) };
  }
  return ok({
    settings,
    schema,
    sampling: sampling.value,
    survey: surveySettingsOf(settings.survey),
    shift: shift.value,
  });
}
