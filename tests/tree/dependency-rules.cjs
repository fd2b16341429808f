/**
 * Which folder may import which; an `import type` counts. Run from the top folder:
 * `depcruise --config tests/tree/dependency-rules.cjs src shared`. rules.test.ts shows each rule biting.
 */

/** All may import `shared` as well. `commands` may import everything, so it has no line of its own. */
const MAY_IMPORT = {
  answers: [],
  checks: [],
  season: [],
  settings: [],
  store: [],
  dialog: ['answers', 'checks'],
  desk: ['answers', 'checks'],
  exchange: ['store', 'dialog', 'desk'],
  channels: ['exchange'],
  publish: ['season'],
  sheets: ['answers'],
  page: ['exchange', 'publish', 'season'],
};
const FOLDERS = [...Object.keys(MAY_IMPORT), 'commands'];

const oneWay = Object.entries(MAY_IMPORT).map(([folder, others]) => ({
  name: `imports-of-${folder}`,
  comment: `src/${folder} may import ${[...others, 'shared'].join(', ')}.`,
  severity: 'error',
  from: { path: `^src/${folder}/` },
  to: { path: '^src/', pathNot: `^src/(${[folder, ...others].join('|')})/` },
}));

module.exports = {
  forbidden: [
    ...oneWay,
    {
      name: 'imports-of-shared',
      comment: 'shared imports only itself and packages.',
      severity: 'error',
      from: { path: '^shared/' },
      to: { path: '^src/' },
    },
    {
      name: 'imports-of-the-way-in',
      comment: 'A file directly in src only leads to src/commands.',
      severity: 'error',
      from: { path: '^src/[^/]+$' },
      to: { path: '^src/[^/]+/', pathNot: '^src/commands/' },
    },
    {
      name: 'folder-without-a-line',
      comment: 'A new folder of src needs its line in MAY_IMPORT.',
      severity: 'error',
      from: { path: '^src/[^/]+/', pathNot: `^src/(${FOLDERS.join('|')})/` },
      to: {},
    },
    {
      name: 'imports-of-tests',
      comment: 'The program does not lean on its tests.',
      severity: 'error',
      from: { path: '^(src|shared)/' },
      to: { path: '^tests/' },
    },
    {
      name: 'no-cycle',
      comment: 'Of two files that import each other, neither can be read first.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'not-found',
      comment: 'An import that leads nowhere would pass every other rule.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    // Sees `import type`, which is gone once compiled.
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    // Several packages are found by their `exports` alone.
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default', 'types'] },
  },
};
