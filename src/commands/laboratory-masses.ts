import { recordReceivedMasses } from '../acts/laboratory-masses.ts';
import type { Outside } from '../desk/outside.ts';
import { remedyUnsaved, untilSaved } from '../desk/until-saved.ts';
import { resultsRefused } from '../sampling/findings.ts';
import { receivedMasses } from '../sampling/laboratory/laboratory-masses.ts';
import { returnedOf } from '../standing/returned.ts';
import { atProject, holesOf, type Shared } from './at-project.ts';
import { wrongUse } from './findings.ts';
import { makerOf } from './lines/submit-made.ts';
import { EXIT, refuse, say, sayTrouble } from './say.ts';

/** Records the masses of calicos as the laboratory received them in their holes, as one edit; 1 where one of them can't be a mass. */
export function laboratoryMasses(outside: Outside, asked: Shared): Promise<number> {
  return atProject(outside, { ...asked, write: true }, async ({ desk, project }) => {
    const mapped = project.sampling.results?.mass;
    if (mapped === undefined)
      return refuse(
        outside,
        resultsRefused.at(
          { file: 'project.json', field: 'sampling.results' },
          {
            problem: 'no column of the certificates is mapped as the mass received',
            remedy: 'Write "mass": { "column": "Wt_kg", "unit": "kg" }, then take the certificate in.',
          },
        ),
      );
    const { certificates } = returnedOf(project, desk.documents().values());
    const { masses, findings } = receivedMasses(mapped, certificates);
    if (findings.length > 0) sayTrouble(outside, { findings });
    const { what, metres, parts } = recordReceivedMasses(holesOf(desk), masses, makerOf(desk));
    const code = findings.length > 0 ? EXIT.findings : EXIT.fine;
    if (metres === 0) {
      say(outside, `${masses.length} masses came back; none is of a metre that was not weighed already.`);
      return code;
    }
    const submitted = desk.submit({ what, parts });
    const saved = await untilSaved(desk, submitted);
    if (!saved.ok)
      return refuse(
        outside,
        wrongUse.at(
          { thing: 'masses' },
          { problem: saved.problem, remedy: remedyUnsaved(saved, 'the command') },
        ),
      );
    say(outside, `Recorded: ${what}.`);
    return code;
  });
}
