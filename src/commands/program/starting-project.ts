import type { JsonText } from '../../files/read-json.ts';
import { USUAL_CAUTIONS } from '../../project/cautions.ts';
import type { ProjectSettings } from '../../project/settings.ts';
import { styleHash } from '../../schema/read/chain.ts';
import { starterRules } from '../../termination/rules/starter-rules.ts';
import { SCHEMA_FOLDER } from './shipped-schemas.ts';

/** The two hand-written files that a new project starts with: common practice throughout, for people to make their own. */
export function startingProject(given: {
  readonly name: string;
  readonly style: string;
  readonly epsg?: number | undefined;
  /** Initials of the geologist who starts it, and the name of its rig; made up for people to change where not given. */
  readonly by?: string | undefined;
  readonly rig?: string | undefined;
  /** A logging.json of its own, in place of one that extends the style. */
  readonly own?: object | undefined;
  /** The project has the JSON Schemas of its files beside it, for an editor to complete and check by. */
  readonly schemas?: boolean;
}): { readonly project: JsonText; readonly logging: JsonText } {
  const schemaOf = (kind: string) =>
    given.schemas === true ? { $schema: `./${SCHEMA_FOLDER}/${kind}.schema.json` } : {};
  return {
    project: jsonText('project.json', {
      ...schemaOf('project'),
      ...settingsOf(given.own === undefined ? given : { ...given, style: 'none' }),
    }),
    logging:
      given.own === undefined
        ? jsonText('logging.json', {
            ...schemaOf('logging'),
            format: 1,
            name: 'logging',
            extends: given.style,
            extendsHash: styleHash(given.style),
          })
        : entriesText('logging.json', { ...schemaOf('logging'), ...given.own }),
  };
}

function jsonText(file: string, value: unknown): JsonText {
  return { file, text: `${JSON.stringify(value, null, 2)}\n`, value } as JsonText;
}

/** A file whose entries are read by eye: what holds no further entries is on one line. */
function entriesText(file: string, value: unknown): JsonText {
  const holdsEntries = (each: unknown): boolean =>
    typeof each === 'object' &&
    each !== null &&
    Object.values(each).some((inner) => typeof inner === 'object' && inner !== null && !isPlain(inner));
  const isPlain = (each: object): boolean =>
    Object.values(each).every((inner) => typeof inner !== 'object' || inner === null);
  const written = (each: unknown, indent: string): string => {
    if (typeof each !== 'object' || each === null) return JSON.stringify(each);
    const isList = Array.isArray(each);
    const spread =
      indent === '' || holdsEntries(each) || (isList && each.some((one) => typeof one === 'object'));
    if (!spread) return JSON.stringify(each, null, 1).replace(/\n\s*/g, ' ');
    const inner = Object.entries(each).map(
      ([name, one]) =>
        `${indent}  ${isList ? '' : `${JSON.stringify(name)}: `}${written(one, `${indent}  `)}`,
    );
    return `${isList ? '[' : '{'}\n${inner.join(',\n')}\n${indent}${isList ? ']' : '}'}`;
  };
  return { file, text: `${written(value, '')}\n`, value } as JsonText;
}

function settingsOf({
  name,
  style,
  epsg,
  by = 'GEO',
  rig = 'RIG1',
}: Parameters<typeof startingProject>[0]): ProjectSettings {
  return {
    format: 1,
    name,
    people: [{ initials: by.toUpperCase(), name: 'Rig geologist', role: 'geologist' }],
    rigs: [{ name: rig.toUpperCase(), rodM: 6, firstRodOffsetM: 0, bitMm: 139.7 }],
    log: { intervalM: 1, gloves: false },
    hazards: { standOffM: 10, cautions: [...USUAL_CAUTIONS] },
    sampling: samplingOf(rig.toUpperCase(), style),
    survey: epsg === undefined ? {} : { grid: { epsg } },
    shift: SHIFT,
    termination: { rules: [...starterRules(style)] },
  };
}

const samplingOf = (rig: string, style: string): ProjectSettings['sampling'] => ({
  numbers: { prefixes: ['ZQ'], digits: 6, blocks: [{ rig, first: 'ZQ000001', last: 'ZQ009999' }] },
  sampled: { rank: 'metre', lengthM: 1 },
  controls: {
    slots: [
      { every: 20, at: 0, kind: 'standard' },
      { every: 20, at: 13, kind: 'field duplicate' },
      { every: 40, at: 27, oneOf: ['blank', 'standard'], usually: 'blank' },
    ],
    standards: [{ lot: 'lot 1', sachets: 0 }],
    blanks: [{ name: 'coarse blank', type: 'coarse', bags: 0 }],
    duplicates: 'second chute',
    rotationSeed: 'change these words and keep them from the laboratory',
    onDemand: [...(ON_DEMAND[style] ?? [])],
    wanted: {},
  },
  split: { targetKg: 3, tolerancePercent: 33 },
  recovery: { lowPercent: 70, highPercent: 110 },
  trays: { compartments: 20, metresPerCompartment: 1 },
  sackBags: 5,
});

/** Controls that the log asks for, by style, beside the slots. Gold can't be seen coming; copper can, and smears into the next bag. */
const ON_DEMAND: Readonly<Record<string, ProjectSettings['sampling']['controls']['onDemand']>> = {
  'porphyry-copper-gold': [
    {
      when: {
        any: [
          { field: 'sulphides', of: 'CCI', atLeast: 2 },
          { field: 'sulphides', of: 'BOR', atLeast: 2 },
          { field: 'sulphides', of: 'CCP', atLeast: 3 },
          { field: 'copperoxides', atLeast: 3 },
        ],
      },
      kind: 'blank',
      why: 'rich copper: does it carry over into the next bag?',
    },
  ],
  'lateritic-nickel': [
    {
      when: { field: 'minerals', of: 'GNI', atLeast: 5 },
      kind: 'blank',
      why: 'much garnierite: does it carry over into the next bag?',
    },
  ],
  'epithermal-gold-silver': [
    {
      when: {
        any: [
          { field: 'sulphides', of: 'ELE', atLeast: 0.1 },
          { field: 'sulphides', of: 'ACA', atLeast: 1 },
        ],
      },
      kind: 'blank',
      why: 'electrum or much acanthite: does it carry over into the next bag?',
    },
  ],
  'lithium-pegmatite': [
    {
      when: { field: 'minerals', of: 'SPD', atLeast: 20 },
      kind: 'blank',
      why: 'much spodumene: does it carry over into the next bag?',
    },
  ],
  'iron-oxide-copper-gold': [
    {
      when: {
        any: [
          { field: 'sulphides', of: 'CCI', atLeast: 2 },
          { field: 'sulphides', of: 'BOR', atLeast: 2 },
          { field: 'sulphides', of: 'CCP', atLeast: 3 },
          { field: 'copperoxides', atLeast: 3 },
        ],
      },
      kind: 'blank',
      why: 'rich copper: does it carry over into the next bag?',
    },
  ],
  'komatiite-nickel-sulphide': [
    {
      when: {
        any: [
          { field: 'rock', is: 'MSU' },
          { field: 'sulphidetexture', is: 'MTO' },
        ],
      },
      kind: 'blank',
      why: 'massive or matrix sulphide: does it carry over into the next bag?',
    },
  ],
  'volcanic-massive-sulphide': [
    {
      when: {
        any: [
          { field: 'rock', is: 'MSU' },
          { field: 'sulphides', atLeast: 50 },
        ],
      },
      kind: 'blank',
      why: 'massive sulphide: does it carry over into the next bag?',
    },
  ],
  'sediment-hosted-zinc-lead': [
    {
      when: {
        any: [
          { field: 'sulphides', of: 'SPH', atLeast: 5 },
          { field: 'sulphides', of: 'GAL', atLeast: 3 },
          { field: 'oxides', of: 'CER', atLeast: 3 },
        ],
      },
      kind: 'blank',
      why: 'rich zinc or lead: does it carry over into the next bag?',
    },
  ],
  'carbonatite-rare-earths': [
    {
      when: { field: 'ore', atLeast: 5 },
      kind: 'blank',
      why: 'much ore mineral: does it carry over into the next bag?',
    },
  ],
  'clay-rare-earths': [
    {
      when: { field: 'plasticity', atLeast: 4 },
      kind: 'blank',
      why: 'sticky clay: does it hang in the cyclone and the splitter into the next bag?',
    },
  ],
};

/** Rates are nought until the contract's are put in: a made-up one would look like a real one. */
const SHIFT: ProjectSettings['shift'] = {
  shifts: [
    { name: 'day', startsAt: '06:00', endsAt: '18:00' },
    { name: 'night', startsAt: '18:00', endsAt: '06:00' },
  ],
  activities: [
    { code: 'drilling', label: 'Drilling', charge: 'metres', key: 'd' },
    { code: 'survey', label: 'Surveying', charge: 'active hourly', key: 'v' },
    { code: 'line-up', label: 'Lining up', charge: 'active hourly', key: 'l' },
    { code: 'standby', label: 'Standby', charge: 'standby hourly', key: 's' },
    { code: 'breakdown', label: 'Breakdown', charge: 'no charge', key: 'b' },
    { code: 'move', label: 'Moving to the next pad', charge: 'active hourly', key: 'm' },
  ],
  contract: {
    currency: '$',
    rounding: 'half-up',
    metreRates: [{ centsPerM: 0 }],
    activeHourlyCents: 0,
    standbyHourlyCents: 0,
  },
  tolerances: { minutes: 15, metresM: 0.5, shots: 0, consumables: 0, cents: 100 },
};
