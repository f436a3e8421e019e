import swc from '@swc/core';

/**
 * The cruiser asks swc for plain TypeScript whatever the file, and stumbles over the first tag of a .tsx file. Until it asks
 * properly, the question is mended here, in the one process that loads these settings.
 */
const parse = swc.parseFileSync;
/** @type {any} */ (swc).parseFileSync = (/** @type {string} */ file, /** @type {any} */ options) =>
  parse(file, { ...options, tsx: file.endsWith('x') });

/**
 * The floors, low to high; a file imports from its own floor or a lower one. Folders on one line share a height and may not
 * import each other. test/architecture.test.ts plants a bad import for every rule below and demands that the rule fires.
 */
const floors = [
  ['geom'],
  ['units'],
  ['wood'],
  ['model'],
  ['shapes', 'makers'],
  ['boards', 'solids'],
  ['joints'],
  ['build'],
  ['fits'],
  ['assembly'],
  ['papers'],
  ['exports'],
  ['piece'],
  ['cli'],
];

/** @param {string[]} names */
const folder = (names) => `^src/(${names.join('|')})/`;

/** One rule for each folder: nothing above it, nothing beside it. */
const floorRules = floors.flatMap((names, height) =>
  names.map((name) => {
    const barred = [...names.filter((other) => other !== name), ...floors.slice(height + 1).flat()];
    return {
      name: `floor-${name}`,
      comment: `${name} imports only from its own and lower floors`,
      severity: 'error',
      from: { path: folder([name]) },
      // The highest floor has nothing above it: there the rule guards only against a folder that is on no floor.
      to: barred.length > 0 ? { path: folder(barred) } : { path: '^src/', pathNot: folder(floors.flat()) },
    };
  }),
);

export default {
  forbidden: [
    {
      name: 'no-circle',
      comment: 'no circles of imports, types included',
      severity: 'error',
      from: { path: '^(src|web)/' },
      to: { circular: true },
    },
    ...floorRules,
    {
      name: 'on-a-floor',
      comment: 'every file of src is on a floor named above',
      severity: 'error',
      from: { path: '^src/', pathNot: folder(floors.flat()) },
      to: {},
    },
    {
      name: 'core-without-app',
      comment: 'src knows nothing of the app and of the tests',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^(web|test|\\.ci)/' },
    },
    {
      name: 'core-without-screen',
      comment: 'no react, three, store, browser storage or worker library in src',
      severity: 'error',
      from: { path: '^src/' },
      to: {
        path: '(^|node_modules/)(react|react-dom|three|zustand|idb|comlink|@react-[a-z]+|@types/(react|three)[a-z-]*|react-aria[a-z-]*)(/|$)',
      },
    },
    {
      name: 'web-without-shell',
      comment: 'the app does not import the command line or the tests',
      severity: 'error',
      from: { path: '^web/' },
      to: { path: '^(src/cli|test|\\.ci)/' },
    },
    {
      name: 'kernel-door',
      comment: 'solids/ is the only door to the geometry kernel; web may name its wasm file so that the build ships it',
      severity: 'error',
      from: { path: '^(src|web)/', pathNot: '^src/solids/' },
      to: { path: '(^|node_modules/)manifold-3d(/|$)', pathNot: '\\.wasm(\\?url)?$' },
    },
    {
      name: 'no-kernel-reached',
      comment: 'these floors do not reach the kernel by any way, so that their workers carry no wasm',
      severity: 'error',
      from: { path: folder(['geom', 'units', 'wood', 'model', 'shapes', 'boards']) },
      to: { path: '(^|node_modules/)manifold-3d(/|$)', reachable: true },
    },
    {
      name: 'node-only-in-cli',
      comment: 'files, clocks and processes belong to src/cli',
      severity: 'error',
      from: { path: '^(src|web)/', pathNot: '^src/cli/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'families-apart',
      comment: 'no joint family imports another: what two share goes down, to shapes/ or to the top of joints/',
      severity: 'error',
      from: { path: '^src/joints/([^/]+)/' },
      to: { path: '^src/joints/[^/]+/', pathNot: '^src/joints/$1/' },
    },
    {
      name: 'no-dev-dependency',
      comment: 'what ships imports only what package.json lists under dependencies; types are another matter',
      severity: 'error',
      from: { path: '^(src|web)/' },
      to: { dependencyTypes: ['npm-dev', 'npm-no-pkg'], dependencyTypesNot: ['type-only'], pathNot: 'node_modules/@types/' },
    },
    {
      name: 'no-unresolved',
      comment: 'an import that leads nowhere would hide from every other rule',
      severity: 'error',
      from: { path: '^(src|web)/' },
      to: { couldNotResolve: true, pathNot: '\\?(url|raw|worker|inline)' },
    },
  ],
  options: {
    // TypeScript 7 has no JavaScript interface: without swc nothing would be read, and nothing would be found.
    parser: 'swc',
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'types', 'default'],
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.json', '.d.ts'],
    },
  },
};
