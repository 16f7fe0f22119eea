import type { Outside } from '../desk/outside.ts';
import { csvText } from '../finding/sheet-text.ts';
import { headerOf, holeNouns } from '../hole/hole.ts';
import type { Project } from '../project/project.ts';
import { formatDepth } from '../quantity/depth.ts';
import { resultsByMetre } from '../sampling/laboratory/by-metre.ts';
import { figure } from '../sampling/laboratory/charts-text.ts';
import { type AssayValue, countedUnit } from '../sampling/laboratory/results-read.ts';
import { returnedOf } from '../standing/returned.ts';
import { atProject, holeNamed, type Shared } from './at-project.ts';
import { EXIT, refuse, say, sayFile } from './say.ts';
import { tableText } from './table-text.ts';

/** Results of one hole by metre, ranked: composites and single metres both stand. */
export function resultsOfHole(
  outside: Outside,
  asked: Shared & { readonly hole: string; readonly csv: boolean },
): Promise<number> {
  return atProject(outside, asked, async (at) => {
    const hole = holeNamed(at, asked.hole);
    if (!hole.ok) return refuse(outside, ...hole.findings);
    const { project, desk } = at;
    const returned = returnedOf(project, desk.documents().values());
    const analytes = analytesOf(project);
    const ranked = resultsByMetre(holeNouns(hole.value, 'bags'), returned.byNumber, project.sampling.rank);
    const headings = [
      'from_m',
      'to_m',
      'sample',
      'rank',
      'best',
      ...analytes.map((each) => `${each}_${countedUnit(project.sampling.results, each)}`),
    ];
    const rows = ranked.map(({ fromMm, toMm, number, rank, best, values }) => [
      formatDepth(fromMm),
      formatDepth(toMm),
      number,
      rank,
      best ? 'yes' : 'no',
      ...analytes.map((each) => valueText(values[each])),
    ]);
    if (asked.csv) sayFile(outside, csvText([headings, ...rows]));
    else if (rows.length === 0) say(outside, `No result of ${headerOf(hole.value).name} came back yet.`);
    else say(outside, tableText([headings, ...rows]));
    return EXIT.fine;
  });
}

function analytesOf({ sampling }: Project): readonly string[] {
  return [...new Set((sampling.results?.analytes ?? []).map((each) => each.analyte))];
}

/** A value as it counts; under or over a limit it is shown as that limit, with its sign. */
function valueText(value: AssayValue | undefined): string {
  if (value === undefined) return '';
  if (value.belowLimit !== undefined) return `<${figure(value.belowLimit)}`;
  return value.aboveLimit === undefined ? figure(value.value) : `>${figure(value.aboveLimit)}`;
}
