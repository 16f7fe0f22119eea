import { changeFieldOnRig } from '../desk/add-code.ts';
import { rulesGoneBlind } from '../desk/change-logging.ts';
import type { Outside } from '../desk/outside.ts';
import { type FieldChange, fieldProblem, sheetOrder, withField } from '../schema/change/edit-field.ts';
import { newlyFound } from '../schema/change/preview-change.ts';
import { atProject, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { EXIT, refuse, say, sayAside, sayJson, sayTrouble } from './say.ts';

/** What `offsider schema field` is given. */
export interface FieldAsked extends Shared {
  readonly field: string;
  readonly change: FieldChange;
  /** Takes it off the log sheet: from a date on, or from today. */
  readonly retire?: true | string | undefined;
  readonly preview: boolean;
  readonly json: boolean;
}

/** Changes, moves or retires a field of the log sheet. Gives 1 where the check finds a fault in what comes of it: then nothing is changed. */
export function changeSchemaField(outside: Outside, asked: FieldAsked): Promise<number> {
  return atProject(outside, { ...asked, write: !asked.preview }, async ({ desk, project }) => {
    const { field, retire, preview, json } = asked;
    const retiredSince = retire === true ? desk.now().slice(0, 10) : retire;
    const change = { ...asked.change, ...(retiredSince === undefined ? {} : { retiredSince }) };
    const problem = fieldProblem(project.schema, field, change);
    if (problem !== undefined)
      return refuse(
        outside,
        wrongUse.at({ field }, { problem, remedy: 'Look at the names: offsider schema keys.' }),
      );
    if (Object.keys(change).length === 0)
      return refuse(
        outside,
        wrongUse.at(
          { field },
          {
            problem: 'what changes is missing',
            remedy: 'Give --label, --after, --first, --required or --retire.',
          },
        ),
      );
    const after = withField(project.schema, field, change);
    const faults = [...newlyFound(project.schema, after), ...rulesGoneBlind(project, after)].filter(
      ({ severity }) => severity === 'fault',
    );
    if (!preview || faults.length > 0) {
      const changed =
        faults.length > 0
          ? { ok: false as const, findings: faults }
          : await changeFieldOnRig(desk, field, change);
      if (!changed.ok) {
        sayTrouble(outside, { findings: changed.findings });
        sayAside(outside, 'Nothing was changed.');
        return EXIT.findings;
      }
    }
    const order = sheetOrder(after);
    if (json) sayJson(outside, { field, written: !preview, fields: after.fields.map(({ name }) => name) });
    else
      say(
        outside,
        `The log sheet ${preview ? 'would be' : 'is'}: ${order} (* required).${preview ? ' Nothing was changed.' : ' The former logging.json is kept.'}`,
      );
    return EXIT.fine;
  });
}
