import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { runCommandLine } from '../../../src/commands/command-line/run.ts';
import { results } from '../../../src/commands/results.ts';
import { openDesk } from '../../../src/desk/desk.ts';
import { deskOptions } from '../../desk/support/project.ts';
import { seededRandom } from '../../desk/support/values.ts';
import { COMPOSITE_GOLD, compositeProject, goldFile } from './composites.ts';
import { freshFolder, hear, SAMPLE } from './outside.ts';

/** Who changed the copy that arrives. */
export const THEIRS = 'MTA';

/** A project that a command is tried on: the sample as it is, or after something that the command is for. */
export type Start = 'sample' | 'mapped' | 'taken' | 'asked' | 'gone' | 'composites' | 'heard';

/** One command as it is tried: words of its name, arguments and options that it always gets, each option of its own with its value. */
export interface CommandCase {
  readonly name: readonly string[];
  readonly args?: readonly string[];
  /** Options given each time, behind the arguments. */
  readonly always?: readonly string[];
  /** Its own options: what is written behind each, and what else it needs. `instead` takes the place of the arguments. */
  readonly options?: Readonly<Record<string, OptionCase>>;
  readonly stdin?: string;
  readonly start?: Start;
  /** It records something in a document's history, or in the list of what was let go. */
  readonly signs?: true;
  /** Initials that may sign it, where not anyone's do. */
  readonly signer?: string;
  /** Makes a project of its own, or opens one of its own: `--project` is not the sample. */
  readonly ownProject?: 'new' | 'demo';
}

export interface OptionCase {
  readonly value?: string;
  readonly needs?: readonly string[];
  readonly instead?: readonly string[];
}

const FLAG: OptionCase = {};
const at = (value: string, more: Omit<OptionCase, 'value'> = {}): OptionCase => ({ value, ...more });

/** Every command. `{in}` is a folder with files to read, `{out}` an empty one. */
export const COMMANDS: readonly CommandCase[] = [
  { name: [], args: ['{project}'], options: { '--read-only': FLAG, '--take-over': FLAG } },
  { name: ['demo'], ownProject: 'demo' },
  {
    name: ['new'],
    args: ['{out}/flat'],
    options: {
      '--style': at('porphyry'),
      '--dictionary': at('{in}/own.csv'),
      '--program': at('{project}/program.csv', { needs: ['--epsg', '7851'] }),
      '--epsg': at('7851'),
      '--keep-going': FLAG,
    },
    ownProject: 'new',
  },
  {
    name: ['program'],
    args: ['{project}/program.csv'],
    options: { '--preview': FLAG, '--keep-going': FLAG },
  },
  {
    name: ['holes'],
    options: { '--history': at('MBRC003'), '--after': at('3', { needs: ['--history', 'MBRC003'] }) },
  },
  { name: ['check'], args: ['MBRC003'], options: { '--from': at('fault') } },
  {
    name: ['check'],
    args: ['MBRC003'],
    always: ['--accept', '49fd', '--because', 'not looked at'],
    options: {
      '--accept': at('49fd'),
      '--because': at('not looked at'),
      '--open': at('49fd', { instead: ['MBRC003'] }),
      '--sign-off': at('all seen', { instead: ['MBRC002A'] }),
      '--open-again': at('bags wrong', { instead: ['MBRC002A'] }),
    },
    signs: true,
  },
  { name: ['shift'], args: ['2026-03-13'] },
  {
    name: ['activity'],
    args: ['breakdown', 'hydraulic', 'hose'],
    options: {
      '--shift': at('RC7_2026-03-12_DAY', { instead: ['09:00', 'by', 'Ines', 'Falk'] }),
      '--keep-going': { instead: ['crew', 'Bo', 'Hale'] },
    },
    signs: true,
  },
  {
    name: ['plod'],
    options: {
      '--reconcile': at('2026-03-12..2026-03-14'),
      '--csv': { needs: ['--reconcile', '2026-03-12'] },
      '--html': { needs: ['--reconcile', '2026-03-12'] },
    },
  },
  {
    name: ['plod', 'new'],
    args: ['0413'],
    options: {
      '--shift': at('RC7_2026-03-13_DAY'),
      '--from': at('Mick Tarrant', { needs: ['--shift', 'RC7_2026-03-13_DAY'] }),
      '--crew': at('Bo Hale, Cy Tan', { needs: ['--shift', 'RC7_2026-03-13_DAY'] }),
      '--remark': at('late start', { needs: ['--shift', 'RC7_2026-03-13_DAY'] }),
      '--from-csv': at('{in}/plod.csv', { needs: ['--shift', 'RC7_2026-03-13_DAY'] }),
      '--second': { needs: ['--shift', 'RC7_2026-03-12_DAY'] },
      '--as-written': { needs: ['--shift', 'RC7_2026-03-13_DAY'] },
    },
    stdin: '05:32-06:00 p\n-17:40 s =\n',
    signs: true,
  },
  ...(['agree', 'correct', 'open'] as const).map(
    (word): CommandCase => ({
      name: ['plod', word],
      args: ['hours metres', 'said', 'so'],
      options: { '--shift': at('RC7_2026-03-12_DAY') },
      always: ['--shift', 'RC7_2026-03-12_DAY'],
      signs: true,
    }),
  ),
  {
    name: ['plod', 'line'],
    args: ['1', '05:30-06:00', 'p'],
    options: { '--shift': at('RC7_2026-03-12_DAY') },
    always: ['--shift', 'RC7_2026-03-12_DAY'],
    signs: true,
  },
  {
    name: ['plod', 'sign'],
    args: ['0412'],
    options: { '--shift': at('RC7_2026-03-12_DAY') },
    always: ['--shift', 'RC7_2026-03-12_DAY'],
    signs: true,
    signer: 'IFA',
  },
  {
    name: ['plod', 'withdraw'],
    args: ['0412'],
    options: { '--shift': at('RC7_2026-03-12_DAY') },
    always: ['--shift', 'RC7_2026-03-12_DAY'],
    signs: true,
  },
  {
    name: ['note'],
    options: { '--html': FLAG, '--swing': at('2026-03-13'), '--shift': at('RC7_2026-03-14_DAY') },
  },
  { name: ['note', 'complete'], args: ['water', 'truck', 'at', '07:00'], signs: true },
  { name: ['note', 'acknowledge'] },
  {
    name: ['pack'],
    args: ['MBRC003'],
    options: { '--with-paths': FLAG, '--whole': FLAG, '--for': at('IFA') },
    start: 'heard',
  },
  {
    name: ['import'],
    start: 'mapped',
    always: ['--collars', '{in}/old-collars.csv'],
    options: {
      '--collars': at('{in}/old-collars.csv'),
      '--surveys': at('{in}/old-shots.csv'),
      '--geology': at('{in}/old-log.csv'),
      '--preview': FLAG,
    },
    signs: true,
  },
  { name: ['tables'], options: { '--to': at('{out}/flat'), '--csv': { needs: ['collars'] } } },
  {
    name: ['receive'],
    args: ['{in}/MBRC003.json'],
    options: { '--may-clear': FLAG, '--new': at('{out}/begun') },
    start: 'taken',
    signs: true,
  },
  {
    name: ['enter'],
    args: ['MBRC003'],
    options: { '--keep-going': FLAG },
    stdin: ';wet\n;shot 54 -59.5 271.2 =\n',
    signs: true,
  },
  {
    name: ['bags'],
    args: ['MBRC003'],
    options: { '--to': at('70'), '--csv': FLAG, '--html': FLAG, '--issued': FLAG },
  },
  {
    name: ['termination'],
    args: ['MBRC003'],
    options: {
      '--at': at('50'),
      '--as-then': { needs: ['--at', '50'] },
      '--what-if': at('p1;.;.'),
      '--why': at('barren tail'),
      '--check': { instead: [] },
      '--replay': { instead: ['MBRC002'] },
    },
  },
  {
    name: ['survey'],
    args: ['MBRC003'],
    options: {
      '--csv': FLAG,
      '--svg': at('plan'),
      '--html': FLAG,
      '--shots': at('{in}/shots.csv', { needs: ['--run', 'north-seeking in tool gyro 9'] }),
      '--run': at('north-seeking in tool gyro 9', { needs: ['--shots', '{in}/shots.csv'] }),
      '--columns': at('depth=Depth', { needs: ['--shots', '{in}/shots.csv'] }),
      '--bit-depths': { needs: ['--shots', '{in}/shots.csv'] },
      '--inclinations': { needs: ['--shots', '{in}/shots.csv'] },
      '--keep-going': { needs: ['--shots', '{in}/shots.csv'] },
      '--insist': { needs: ['--shots', '{in}/shots.csv'] },
    },
  },
  {
    name: ['survey'],
    args: ['MBRC003'],
    always: ['--shots', '{in}/shots.csv', '--run', 'north-seeking in tool gyro 9'],
    signs: true,
  },
  {
    name: ['line-up'],
    args: ['MBRC004'],
    options: {
      '--cautions': at('NOK'),
      '--permission': at('Mick Tarrant'),
      '--way': at('pegs'),
      '--azimuth': at('270.3'),
      '--compass': at('22:269.5,270'),
      '--crew-dip': at('-60'),
      '--clinometer': at('-60.1'),
      '--collar': at('412500.2 6002241 431'),
      '--gps': at('{in}/gps.txt'),
      '--record': FLAG,
      '--because': at('the pad is soft', { needs: ['--way', 'pegs'] }),
    },
  },
  {
    name: ['line-up'],
    args: ['MBRC004'],
    always: [
      '--cautions',
      'NOK',
      '--permission',
      'Mick Tarrant',
      '--way',
      'pegs',
      '--azimuth',
      '270.3',
      '--clinometer',
      '-60.1',
      '--record',
    ],
    signs: true,
  },
  {
    name: ['collars'],
    args: ['{in}/collars.csv'],
    options: {
      '--columns': at('hole=hole'),
      '--source': at('Dune Survey'),
      '--mine-grid': FLAG,
      '--keep-going': FLAG,
    },
    signs: true,
  },
  { name: ['dispatch'] },
  {
    name: ['dispatch', 'new'],
    args: ['MB000301-MB000305'],
    options: { '--name': at('D9'), '--laboratory': at('Elsewhere'), '--seal': at('S100'), '--dry-run': FLAG },
    signs: true,
  },
  {
    name: ['dispatch', 'pass'],
    args: ['NOK', 'Outback Freight'],
    always: ['--sacks', '34'],
    options: { '--sacks': at('34'), '--bags': at('169'), '--from': at('the rig'), '--seal-broken': FLAG },
    signs: true,
  },
  { name: ['dispatch', 'receipt'], args: ['NOK', '{project}/laboratory/receipt.csv'], signs: true },
  { name: ['dispatch', 'sheet'], options: { '--camp': FLAG, '--csv': FLAG, '--html': FLAG } },
  {
    name: ['results'],
    args: ['{project}/laboratory/WA26-0417.csv'],
    options: {
      '--certificate': at('W2'),
      '--supersedes': at('WA26-0417'),
      '--keep-going': FLAG,
      '--hole': at('MBRC002'),
      '--masses': FLAG,
      '--csv': { needs: ['--hole', 'MBRC002'] },
      '--html': FLAG,
    },
    signs: true,
  },
  {
    name: ['resplit'],
    args: ['MBRC004'],
    options: { '--numbers': at('MB000701-MB000720'), '--take': FLAG, '--csv': FLAG },
    start: 'composites',
  },
  {
    name: ['resplit'],
    args: ['MBRC004'],
    always: ['--numbers', 'MB000701-MB000720', '--take'],
    start: 'composites',
    signs: true,
  },
  { name: ['controls'] },
  {
    name: ['trays'],
    args: ['MBRC003'],
    options: { '--photos': at('{in}/photos'), '--csv': FLAG },
  },
  { name: ['trays'], args: ['MBRC003'], always: ['--photos', '{in}/photos'], signs: true },
  {
    name: ['questions'],
    args: ['1'],
    always: ['--with', 'theirs'],
    options: { '--with': at('ours') },
    start: 'asked',
    signs: true,
  },
  {
    name: ['readings'],
    args: ['MBRC003', '{in}/ms.csv'],
    always: ['--field', 'magsus', '--from', 'From', '--to', 'To', '--reading', 'K', '--unit', '1e-5 SI'],
    options: {
      '--field': at('magsus'),
      '--depth': at('From'),
      '--from': at('From'),
      '--to': at('To'),
      '--reading': at('K'),
      '--hole': at('Hole'),
      '--unit': at('1e-3 SI'),
      '--depth-is': at('top'),
      '--several': at('mean'),
      '--below': at('nr'),
      '--round': FLAG,
      '--replace': FLAG,
      '--preview': FLAG,
    },
    signs: true,
  },
  {
    name: ['recover'],
    options: {
      '--let-go': at('never drilled', { instead: ['MBRC003'] }),
      '--restore': { instead: ['MBRC003'] },
    },
    start: 'gone',
  },
  { name: ['recover'], args: ['MBRC003'], always: ['--let-go', 'never drilled'], start: 'gone', signs: true },
  {
    name: ['schema', 'check'],
    args: ['{project}/logging.json'],
    options: { '--against': at('orogenic-gold'), '--accept': FLAG },
  },
  {
    name: ['schema', 'keys'],
    options: {
      '--width': at('80'),
      '--html': FLAG,
      '--log-sheet': at('MBRC003'),
      '--bag-sheet': at('MBRC004'),
    },
  },
  {
    name: ['schema', 'propose'],
    options: {
      '--list': at('rocks'),
      '--again': FLAG,
      '--keys': FLAG,
      '--apart': FLAG,
      '--write': FLAG,
      '--print': FLAG,
    },
  },
  {
    name: ['schema', 'field'],
    args: ['colour'],
    always: ['--required', 'yes'],
    options: {
      '--label': at('wet colour of chips'),
      '--after': at('rock'),
      '--first': FLAG,
      '--required': at('yes'),
      '--retire': at('2026-03-14'),
      '--preview': FLAG,
    },
  },
  {
    name: ['schema', 'dictionary'],
    args: ['{in}/dictionary.csv'],
    options: { '--preview': FLAG },
  },
  { name: ['schema', 'diff'], args: ['{project}', 'orogenic-gold'] },
  {
    name: ['schema', 'import'],
    args: ['extras', '{in}/codes.csv'],
    always: ['--code', 'Code', '--label', 'Label'],
    options: {
      '--code': at('Code'),
      '--label': at('Label'),
      '--look': at('Look'),
      '--pair': at('Pair'),
      '--cgi': at('Look'),
      '--mineral': at('Look'),
      '--density': at('Density'),
      '--caution': at('Danger'),
      '--drop-cautions': FLAG,
      '--field': at('rock'),
      '--preview': FLAG,
    },
  },
  { name: ['schema', 'export'] },
  { name: ['schema', 'editor'] },
];

/** What came of one command line: what it printed, and every document and settings file as they are after it. */
export interface Came {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  readonly files: Readonly<Record<string, string>>;
}

/** Runs command lines on copies of a project in each of its starts; what is printed names no folder of the machine. */
export function trying(starts: Readonly<Record<Start, string>>, files: string) {
  return async (start: Start, argv: readonly string[], stdin = ''): Promise<Came> => {
    const home = freshFolder();
    const project = join(home, 'mulgara-bend');
    const out = join(home, 'out');
    mkdirSync(out);
    cpSync(starts[start], project, { recursive: true });
    const filled = argv.map((each) =>
      each.replace('{project}', project).replace('{in}', files).replace('{out}', out),
    );
    const heard = hear(stdin);
    const code = await runCommandLine(filled, {
      outside: heard.outside,
      openConsole: async ({ stdout }, asked) => {
        const { json, folder, ...given } = asked;
        stdout.write(`${JSON.stringify({ folder: basename(folder), ...given })}\n`);
        return 0;
      },
    });
    // Looked for by its plain part first: the expression alone walks every text from every place, which was half of all runs.
    const plain = (text: string) => {
      const named = text.replaceAll(home, '~');
      return named.includes('offsider-demo-') ? named.replaceAll(/\S*offsider-demo-\w+/g, '~') : named;
    };
    return { code, out: plain(heard.out()), err: plain(heard.err()), files: documentsIn(home, plain) };
  };
}

function documentsIn(home: string, plain: (text: string) => string): Readonly<Record<string, string>> {
  const kept = readdirSync(home, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map((each) => join(each.parentPath, each.name))
    .filter((file) => !file.includes('/journal/') || file.endsWith('.jsonl'));
  return Object.fromEntries(kept.map((file) => [plain(file), plain(readFileSync(file, 'utf8'))]));
}

/** How the tables of the import are read. */
const MAPPING = {
  collars: {
    hole: 'hole',
    easting: 'easting',
    northing: 'northing',
    elevation: 'elevation',
    depth: 'depth',
    rank: 'surveyed',
  },
  surveys: {
    hole: 'hole',
    depth: 'depth',
    dip: 'dip',
    north: 'grid',
    tool: 'single shot',
    toolClass: 'magnetic',
  },
  geology: { hole: 'hole', from: 'from', to: 'to', fields: { rock: { column: 'rock' } } },
};

/** What a project knows of a copy that holds nothing of it. */
const HEARD = {
  format: 1,
  copies: [
    { replica: 'k3f9', by: 'IFA', at: '2026-03-14T08:00:00+08:00', documents: [], texts: [], written: [] },
  ],
};

/** Holes that no command here is about: every run reads and checks each file. */
const LEFT_OUT = ['MBRC001', 'MBRC002A', 'MBRC005', 'MBRC006', 'MBRC007'];

/** The projects to start from, made once: the sample; one that took results in and whose hole went its own way; one with a question open; one whose file is gone. */
export async function makeStarts(): Promise<{
  readonly home: string;
  readonly starts: Readonly<Record<Start, string>>;
  readonly files: string;
}> {
  const home = mkdtempSync(join(tmpdir(), 'offsider-starts-'));
  const copy = (name: string) => {
    cpSync(SAMPLE, join(home, name), { recursive: true });
    for (const hole of LEFT_OUT) rmSync(join(home, name, `holes/${hole}.json`));
    return join(home, name);
  };
  const files = join(home, 'in');
  mkdirSync(join(files, 'photos'), { recursive: true });
  for (const [name, text] of Object.entries(FILES)) writeFileSync(join(files, name), text);
  const [theirs, taken, asked, open] = [copy('theirs'), copy('taken'), copy('asked'), copy('open')];
  await edit(theirs, THEIRS, 'wet, they say');
  await edit(taken, 'NOK', 'dry');
  await edit(asked, 'NOK', 'dry');
  cpSync(join(theirs, 'holes/MBRC003.json'), join(files, 'MBRC003.json'));
  const heard = hear();
  await runCommandLine(['receive', join(files, 'MBRC003.json'), '--project', asked], {
    outside: heard.outside,
    openConsole: async () => 0,
  });
  const composites = join(home, 'composites');
  cpSync(await compositeProject(), composites, { recursive: true });
  const certificate = goldFile('WA1', 601, COMPOSITE_GOLD);
  await results(hear().outside, { folder: composites, file: certificate, keepGoing: false, as: 'text' });
  const mapped = copy('mapped');
  const settings = join(mapped, 'project.json');
  writeFileSync(settings, JSON.stringify({ ...JSON.parse(readFileSync(settings, 'utf8')), import: MAPPING }));
  const heardOf = copy('heard');
  mkdirSync(join(heardOf, 'journal'));
  writeFileSync(join(heardOf, 'journal/copies.json'), JSON.stringify(HEARD));
  const gone = join(home, 'gone');
  const desk = await editing(open, 'NOK', 'not filed');
  cpSync(open, gone, { recursive: true });
  await desk.close();
  rmSync(join(gone, 'journal/lock.json'));
  rmSync(join(gone, 'holes/MBRC003.json'));
  return {
    home,
    starts: { sample: copy('sample'), mapped, taken, asked, gone, composites, heard: heardOf },
    files,
  };
}

async function edit(folder: string, person: string, reason: string): Promise<void> {
  const desk = await editing(folder, person, reason);
  await desk.close();
}

/** Changes one cell of the hole. */
async function editing(folder: string, person: string, reason: string) {
  const desk = await openDesk(
    deskOptions(folder, { idleMs: 100_000, person, random: seededRandom(person === THEIRS ? 3 : 5) }),
  );
  if (!desk.ok) throw new Error(JSON.stringify(desk.findings));
  const document = { kind: 'hole', id: 'MBRC003' };
  const edited = desk.value.submit({
    what: 'a reason',
    parts: [{ document, changes: [{ patch: ['hole', 'hole'], set: { stateReason: reason } }] }],
  });
  if (!edited.ok || !(await edited.durable).ok) throw new Error('the edit must be taken');
  return desk.value;
}

const FILES: Readonly<Record<string, string>> = {
  'plod.csv':
    'Start,Finish,Task,Hole,From,To,Surveys,Notes\r\n05:32,06:00,Toolbox,,,,,\r\n06:00,17:40,Standby,,,,,\r\n',
  'shots.csv': 'Depth,Dip,Azimuth\r\n10,-60.0,270.3\r\n20,-60.0,270.4\r\n',
  'collars.csv': 'hole,easting,northing,elevation\nMBRC003,412499.123,6002239.456,431.789\n',
  'ms.csv': 'Hole,From,To,K\nMBRC003,0,1,31\nMBRC003,1,2,42\n',
  'old-collars.csv': 'hole,easting,northing,elevation,depth\nOLD001,412499,6002239,431,60\n',
  'old-shots.csv': 'hole,depth,dip\nOLD001,30,-60.5\n',
  'old-log.csv': 'hole,from,to,rock\nOLD001,0,60,BAS\n',
  'own.csv':
    'part,name,label,look,in,kind,list,required,caution\nfield,rock,rock,,,code,rocks,yes,\ncode,GRA,granite,pale,rocks,,,,\ncode,OST,old stope,rods drop,rocks,,,,void\n',
  'dictionary.csv':
    'part,name,label,in,kind,list\nfield,stain,stains,,codes,stains\ncode,IST,iron stain,stains\ncode,MST,manganese stain,stains\n',
  'codes.csv': 'Code,Label,Look,Pair,Density,Danger\nQQA,Quartzite,glassy,qz,2.7,silica dust\n',
  'gps.txt': '$GPGGA,013000.00,3606.95419,S,12200.54141,E,1,09,0.9,431.0,M,-27.0,M,,*55\n',
  'photos/MBRC003 tray2.jpg': '',
};
