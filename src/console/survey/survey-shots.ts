import type { Finding } from '../../finding/finding.ts';
import type { Shot, SurveyRun } from '../../hole/direction.ts';
import { holeThing, holeThings } from '../../hole/hole.ts';
import { formatAzimuth, type North } from '../../quantity/azimuth.ts';
import { formatDepth, metres } from '../../quantity/depth.ts';
import { formatDip } from '../../quantity/dip.ts';
import type { Document } from '../../record/document.ts';
import type { SurveyChecks, SurveyStanding } from '../../standing/survey.ts';
import { unseenWords } from '../../survey/blunders/blunder-words.ts';
import { shotGap } from '../../survey/findings.ts';
import { bendBetween } from '../../survey/path/severity.ts';
import type { RankedStation } from '../../survey/shots/runs.ts';
import type { Theme } from '../theme.ts';
import { type Line, line, spans, wrap } from '../widgets/line.ts';
import { shotsDown } from './survey.ts';

const COLUMNS = [9, 8, 17, 8, 7, 7, 7] as const;

const inColumns = (cells: readonly string[]): string =>
  cells.map((cell, index) => cell.padEnd(COLUMNS[index] ?? 0)).join('');

/** The heading of the shots: what was read, what is used of it, and how the hole bends from the station above. */
export function shotHeading(north: North): Line {
  const used = `used, ${north === 'mine-grid' ? 'mine' : north}`;
  return line(
    `   ${inColumns(['depth', 'dip', 'azimuth read', used.slice(0, 16)])}   bend   lift   turn`,
    'faint',
  );
}

/** The line-up as station 0, then each shot from the top down: as read and as used. */
export function shotLines(
  hole: Document,
  survey: SurveyStanding,
  checks: SurveyChecks,
  cursor: number,
  theme: Theme,
): readonly Line[] {
  const set = survey.stations.find((one) => one.basis === 'set');
  const first =
    set === undefined
      ? line('   0 m      no line-up is accepted: ;line-up makes one', 'warn')
      : line(
          `   ${inColumns(['0 m', formatDip(set.dip), 'as set', formatAzimuth(set.azimuth).slice(0, 6)])}`,
        );
  const shots = shotsDown(hole);
  return [
    first,
    ...shots.map(([, shot], index) =>
      shotLine(hole, survey, findingsOf(hole, checks, shot), shot, index === cursor, theme),
    ),
  ];
}

function shotLine(
  hole: Document,
  survey: SurveyStanding,
  findings: readonly Finding[],
  shot: Shot,
  here: boolean,
  theme: Theme,
): Line {
  const run = holeThing(hole, 'runs', shot.run);
  const station = stationOf(survey, shot);
  const doubt = findings.length > 0;
  const read =
    shot.azimuthDeg === undefined || run === undefined
      ? 'none'
      : formatAzimuth({ deg: shot.azimuthDeg, north: run.north });
  const words = inColumns([
    `${formatDepth(shot.depthMm)} m`,
    formatDip(shot.dipDeg),
    read,
    usedWords(shot, station),
    ...(station === undefined ? ['', '', ''] : bendWords(survey, station)),
  ]);
  const mark = `${here ? theme.signs.cursor : ' '}${doubt ? '?' : ' '} `;
  return spans(
    [`${mark}${words}`, here ? 'picked' : station === undefined ? 'faint' : doubt ? 'warn' : 'plain'],
    [`  ${noteOf(shot, station, run, survey)}`, 'faint'],
  );
}

/** The azimuth that the path has at a shot; in brackets where the shot gave only its dip. */
function usedWords(shot: Shot, station: RankedStation | undefined): string {
  if (shot.rejected !== undefined || station === undefined) return 'not';
  const deg = formatAzimuth(station.azimuth).slice(0, 5);
  return station.basis === 'measured' ? `${deg}°` : `(${deg})`;
}

/** Severity, lift and turn from the station above, degrees per 30 m. */
function bendWords(survey: SurveyStanding, station: RankedStation): readonly string[] {
  const index = survey.stations.indexOf(station);
  const above = survey.stations[index - 1];
  if (above === undefined) return ['', '', ''];
  const { severity, lift, turn } = bendBetween(above, station, metres(station.depthMm - above.depthMm));
  return [severity.toFixed(1).padStart(6), signed(lift).padStart(6), signed(turn).padStart(6)];
}

function signed(deg: number): string {
  const text = deg.toFixed(1);
  if (Number(text) === 0) return '0.0';
  return deg > 0 ? `+${text}` : text;
}

function noteOf(
  shot: Shot,
  station: RankedStation | undefined,
  run: SurveyRun | undefined,
  { leftOut }: SurveyStanding,
): string {
  if (shot.rejected !== undefined) return 'rejected';
  const left = leftOut.find((each) => each.run === shot.run && each.depthMm === shot.depthMm);
  if (left !== undefined) return left.part === 'shot' ? 'left out' : 'azimuth out';
  if (station === undefined) return 'a better run is used';
  if (shot.azimuthRejected !== undefined) return 'dip only';
  return run === undefined ? '' : run.pass === 'single' ? run.tool : `${run.tool}, ${run.pass}`;
}

function stationOf(survey: SurveyStanding, shot: Shot): RankedStation | undefined {
  if (shot.rejected !== undefined) return undefined;
  return survey.stations.find((one) => one.run === shot.run && one.depthMm === shot.depthMm);
}

/** The findings that are of a shot: at its depth, or of its whole run; one that names another run, or metres without a shot, is not. */
function findingsOf(hole: Document, { findings }: SurveyChecks, shot: Shot): readonly Finding[] {
  const run = holeThing(hole, 'runs', shot.run);
  const runs = holeThings(hole, 'runs').map(([, each]) => nameOfRun(each));
  return findings.filter(({ code, place: { fromMm, toMm, thing } }) => {
    if (fromMm === undefined || code === shotGap.code) return false;
    const own = run !== undefined && (thing === run.tool || thing === nameOfRun(run));
    if (thing !== undefined && runs.some((name) => name.startsWith(thing)) && !own) return false;
    if (own && toMm !== undefined) return shot.depthMm >= fromMm && shot.depthMm <= toMm;
    return fromMm === shot.depthMm || toMm === shot.depthMm;
  });
}

const nameOfRun = (run: SurveyRun) => (run.pass === 'single' ? run.tool : `${run.tool}, ${run.pass}`);

/** What is to be said of this shot (why it is not used, its findings), of the hole as a whole, and how the shot was taken. */
export function shotDetail(
  hole: Document,
  checks: SurveyChecks,
  cursor: number,
  width: number,
): readonly Line[] {
  const shot = shotsDown(hole)[cursor]?.[1];
  const own = shot === undefined ? [] : findingsOf(hole, checks, shot);
  const others = checks.findings.filter(
    (each) => each.place.fromMm === undefined || each.code === shotGap.code,
  );
  const doubts = [...own, ...others]
    .sort((a, b) => Number(b.severity === 'fault') - Number(a.severity === 'fault'))
    .flatMap((each) => findingWords(each, width));
  if (shot === undefined)
    return doubts.length > 0 ? doubts : [line('No shot is recorded yet: n records one.', 'faint')];
  return [
    ...unusedLines(shot, width),
    ...(doubts.length > 0
      ? doubts
      : [
          line('Nothing is doubtful here.', 'good'),
          ...checks.unseen.flatMap((each) => wrap(unseenWords(each), width, 'faint')),
        ]),
    ...takenLines(hole, shot, width),
  ];
}

/** True where the checks say something of the shot in hand. */
export function isDoubted(hole: Document, checks: SurveyChecks, cursor: number): boolean {
  const shot = shotsDown(hole)[cursor]?.[1];
  return shot !== undefined && findingsOf(hole, checks, shot).length > 0;
}

/** Why the shot or its azimuth is not used, and the key that uses it again. */
function unusedLines(shot: Shot, width: number): readonly Line[] {
  return [
    ...(shot.misread === undefined ? [] : wrap(`First typed as ${shot.misread}.`, width, 'faint')),
    ...(shot.rejected === undefined
      ? []
      : wrap(`Not used: ${shot.rejected}. x uses it again, c corrects it.`, width, 'warn')),
    ...(shot.azimuthRejected === undefined
      ? []
      : wrap(
          `Azimuth not used: ${shot.azimuthRejected}. Its dip stands; the azimuth is taken from the stations about it. a uses it again.`,
          width,
          'warn',
        )),
  ];
}

function takenLines(hole: Document, shot: Shot, width: number): readonly Line[] {
  const run = holeThing(hole, 'runs', shot.run);
  if (run === undefined) return [];
  const inside = run.inside === 'rods' ? 'inside the rods' : 'in open hole';
  return wrap(
    `${formatDepth(shot.depthMm)} m: ${run.tool}, ${run.toolClass}, ${inside}, read by ${run.operator}, recorded by ${shot.by}.`,
    width,
    'faint',
  );
}

function findingWords(finding: Finding, width: number): readonly Line[] {
  const { problem, remedy, excerpt } = finding;
  const text = `? ${problem.charAt(0).toUpperCase()}${problem.slice(1)}${excerpt === undefined ? '' : ` (${excerpt})`}. ${remedy}`;
  return wrap(text, width, finding.severity === 'fault' ? 'alert' : 'warn');
}
