/** The lines of the house: a room imports only from rooms with a smaller number. See DEVELOPERS.md. */
const lines = [
  ['quantity'],
  ['value', 'finding'],
  ['record', 'condition'],
  ['schema'],
  ['shorthand', 'hole'],
  ['sampling', 'survey', 'shift'],
  ['termination'],
  ['project'],
  ['standing'],
  ['check'],
  ['acts', 'handover', 'formats'],
  ['files', 'mail'],
  ['desk'],
  ['commands', 'console'],
];
const pure = lines.slice(0, 11).flat();

const forbidden = lines.flatMap((rooms, index) =>
  rooms.map((room) => {
    const allowed = [...lines.slice(0, index).flat(), room];
    return {
      name: `line-${index + 1}-${room}`,
      comment: `${room}/ stands on line ${index + 1}: it may import only from rooms with a smaller number`,
      severity: 'error',
      from: { path: `^src/${room}/` },
      to: { path: '^src/', pathNot: `^src/(${allowed.join('|')})/` },
    };
  }),
);

module.exports = {
  forbidden: [
    ...forbidden,
    {
      name: 'pure-rooms',
      comment: 'rooms on lines 1 to 11 touch no disk, no React, no clock: nothing of Node at all',
      severity: 'error',
      from: { path: `^src/(${pure.join('|')})/` },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'pure-rooms-no-screen-no-store',
      comment: 'rooms on lines 1 to 11 know no React, no Ink, no store',
      severity: 'error',
      from: { path: `^src/(${pure.join('|')})/` },
      to: { path: 'node_modules/(react|ink|zustand|lowdb)/' },
    },
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    { name: 'resolvable', severity: 'error', from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default'],
      extensions: ['.ts', '.tsx', '.js', '.json'],
    },
  },
};
