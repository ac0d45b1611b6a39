// The parser is told of TypeScript but not of tags in it; `.tsx` files need both said.
const swc = require('@swc/core');
const parseFileSync = swc.parseFileSync.bind(swc);
swc.parseFileSync = (file, options) => parseFileSync(file, { ...options, tsx: file.endsWith('.tsx') });

// Who may import whom: the table of DEVELOPERS.md, as errors. What is not listed is forbidden.
const may = {
  'shared/base': [],
  'shared/geometry': ['shared/base'],
  'shared/document': ['shared/base', 'shared/geometry'],
  'shared/solve': ['shared/base', 'shared/geometry', 'shared/document'],
  'shared/sheets': ['shared/base', 'shared/geometry', 'shared/document'],
  'shared/jobs': ['shared/base', 'shared/geometry', 'shared/document', 'shared/solve', 'shared/sheets'],
  'shared/desktop': ['shared/base', 'shared/document'],
  'renderer/widgets': ['shared/base'],
  'renderer/workers': ['shared/base', 'shared/jobs'],
  'renderer/desktop': ['shared/base', 'shared/document', 'shared/desktop'],
  'renderer/state': ['shared/base', 'shared/document', 'shared/jobs', 'shared/desktop', 'renderer/workers', 'renderer/desktop'],
  'renderer/scene': ['shared/base', 'shared/geometry', 'shared/document', 'renderer/state'],
  'renderer/panels': ['shared/base', 'shared/document', 'shared/sheets/format', 'renderer/state', 'renderer/widgets'],
  'renderer/app': ['shared/', 'renderer/'],
  'electron/preload': ['shared/base', 'shared/desktop'],
  'electron/node': ['shared/'],
  'electron/cli': ['shared/', 'electron/node'],
  'electron/main': ['shared/', 'electron/node'],
};
const local = '^(shared|renderer|electron|tests|models)/';
const folderRules = Object.entries(may).map(([from, to]) => ({
  name: `imports-of-${from.replace('/', '-')}`,
  severity: 'error',
  from: { path: `^${from}/` },
  to: { path: local, pathNot: [from, ...to].map((t) => `^${t}${t.endsWith('/') ? '' : '/'}`) },
}));
const onlyIn = (name, packages, folders) => ({
  name: `${name}-only-where-it-belongs`,
  severity: 'error',
  from: { path: local, pathNot: [...folders.map((f) => `^${f}/`), '^tests/'] },
  to: { path: `(^|/)node_modules/(${packages})/` },
});
module.exports = {
  forbidden: [
    ...folderRules,
    {
      name: 'shared-and-renderer-use-no-node',
      severity: 'error',
      from: { path: '^(shared|renderer)/' },
      to: { dependencyTypes: ['core'] },
    },
    onlyIn('electron', 'electron', ['electron/main', 'electron/preload']),
    onlyIn('three', 'three|@react-three', ['renderer/scene']),
    onlyIn('react', 'react|react-dom|zustand', ['renderer']),
    onlyIn('pdf', '@cantoo/pdf-lib|@pdf-lib', ['shared/sheets']),
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'one-run-knows-nothing-of-the-hand-or-of-others-laid-with-it',
      severity: 'error',
      from: { path: '^shared/solve/(bay|search|rod|character|ends|layRun)/' },
      to: { path: '^shared/solve/', pathNot: '^shared/solve/(bay|search|rod|character|ends|layRun)/' },
    },
    {
      name: 'solve-and-sheets-reached-by-a-test',
      severity: 'error',
      from: { path: '^tests/.*\\.test\\.ts$' },
      to: { path: '^shared/(solve|sheets)/', reachable: false },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    parser: 'swc',
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '\\.build/' },
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.js', '.mjs', '.json'], exportsFields: ['exports'], conditionNames: ['import', 'default'] },
  },
};
