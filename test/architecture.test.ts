/** The house rules hold, and the machine that keeps them is awake: every rule fires on a planted fault. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import settings from '../.dependency-cruiser.mjs';
import { families } from '../src/joints/families.ts';
import { cruise, lint, projectRoot, typeCheck, withPlanted } from './support/planted.ts';

/** Low to high; written out here once more on purpose, so that moving a floor takes two hands. */
const heights = {
  geom: 0,
  units: 1,
  wood: 2,
  model: 3,
  shapes: 4,
  makers: 4,
  boards: 5,
  solids: 5,
  joints: 6,
  build: 7,
  fits: 8,
  assembly: 9,
  papers: 10,
  exports: 11,
  piece: 12,
  cli: 13,
} as const;
const floors = Object.keys(heights) as (keyof typeof heights)[];

const filesOf = (folder: string): string[] =>
  readdirSync(join(projectRoot, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .filter((name) => /\.tsx?$/.test(name));

test('the floors hold, and every file is read', () => {
  const { modules, summary } = cruise(projectRoot, ['src', 'web']);
  expect(summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`)).toEqual([]);
  const read = new Map(modules.map(({ source, dependencies }) => [source, dependencies]));
  const files = [...filesOf('src'), ...filesOf('web')];
  expect(files.length).toBeGreaterThan(50);
  expect(files.filter((file) => !read.has(file))).toEqual([]);
  // Types count as imports: a parser that drops them would hide half of the arrows.
  for (const file of files) {
    const text = readFileSync(join(projectRoot, file), 'utf8');
    const named = new Set([...text.matchAll(/^(?:import|export|\}) .*from '(\.[^'?]+)';$/gm)].map((match) => match[1]));
    const seen = new Set(read.get(file)?.map(({ module }) => module));
    expect(
      [...named].filter((name) => !seen.has(String(name))),
      file,
    ).toEqual([]);
  }
});

test('each pair of floors: an import up or sideways is refused, one down is not', () => {
  const pairs = floors.flatMap((from) => floors.filter((to) => to !== from).map((to) => [from, to] as const));
  const files = Object.fromEntries([
    ...floors.map((floor) => [`src/${floor}/leaf.ts`, 'export type Leaf = 1;\n']),
    ...pairs.map(([from, to]) => [`src/${from}/to-${to}.ts`, `import type { Leaf } from '../${to}/leaf.ts';\nexport type X = Leaf;\n`]),
  ]) as Record<string, string>;
  const found = withPlanted(files, (root) =>
    cruise(root, ['src']).summary.violations.map(({ from, to, rule }) => `${rule.name} ${from} ${to}`),
  );
  const barred = pairs.filter(([from, to]) => heights[to] >= heights[from]);
  expect(found.toSorted()).toEqual(barred.map(([from, to]) => `floor-${from} src/${from}/to-${to}.ts src/${to}/leaf.ts`).toSorted());
});

/** Rule, and the files that break it and nothing of their own floor. The first file is the one to blame. */
const plants: Record<string, Record<string, string>> = {
  'no-circle': {
    'src/model/one.ts': "import type { Two } from './two.ts';\nexport type One = Two;\n",
    'src/model/two.ts': "import type { One } from './one.ts';\nexport type Two = One | 1;\n",
  },
  ...Object.fromEntries(
    floors
      .filter((floor) => floor !== 'cli')
      .map((floor) => [
        `floor-${floor}`,
        { [`src/${floor}/up.ts`]: "export const up = () => import('../cli/top.ts');\n", 'src/cli/top.ts': 'export const top = 1;\n' },
      ]),
  ),
  'floor-cli': { 'src/cli/attic.ts': "export { a } from '../attic/a.ts';\n", 'src/attic/a.ts': 'export const a = 1;\n' },
  'on-a-floor': { 'src/attic/b.ts': "export { leaf } from '../geom/b-leaf.ts';\n", 'src/geom/b-leaf.ts': 'export const leaf = 1;\n' },
  'core-without-app': { 'src/piece/app.ts': "import '../../web/main.tsx';\n", 'web/main.tsx': 'export const main = 1;\n' },
  'core-without-screen': { 'src/piece/screen.ts': "import type { Vector3 } from 'three';\nexport type V = Vector3;\n" },
  'web-without-shell': {
    'web/shell.tsx':
      "import '../src/cli/shell.ts';\nexport const Shell = () => <div className={`a ${1}`}>{[1].map((n) => <b key={n} />)}</div>;\n",
    'src/cli/shell.ts': 'export const s = 1;\n',
  },
  'kernel-door': { 'src/joints/kernel.ts': "import Module from 'manifold-3d';\nexport const m = Module;\n" },
  'no-kernel-reached': {
    'src/boards/far.ts': "import { near } from '../units/near.ts';\nexport const far = near;\n",
    'src/units/near.ts': "import { kernel } from '../solids/near.ts';\nexport const near = kernel;\n",
    'src/solids/near.ts': "import Module from 'manifold-3d';\nexport const kernel = Module;\n",
  },
  'node-only-in-cli': { 'src/build/disk.ts': "import { readFileSync } from 'node:fs';\nexport const r = readFileSync;\n" },
  'families-apart': {
    'src/joints/left/left.ts': "import { right } from '../right/right.ts';\nexport const left = right;\n",
    'src/joints/right/right.ts': 'export const right = 1;\n',
  },
  'no-dev-dependency': { 'src/exports/dev.ts': "import { test } from 'vitest';\nexport const t = test;\n" },
  'no-unresolved': { 'src/fits/lost.ts': "import './not-here.ts';\n" },
};

test('every rule has a planted fault', () => {
  expect(settings.forbidden.map(({ name }) => name).toSorted()).toEqual(Object.keys(plants).toSorted());
});

test('every rule fires on its planted fault', () => {
  const files = Object.assign({}, ...Object.values(plants)) as Record<string, string>;
  const { violations } = withPlanted(files, (root) => cruise(root, ['src', 'web'])).summary;
  for (const [rule, planted] of Object.entries(plants)) {
    const blamed = violations.filter(({ rule: { name } }) => name === rule).map(({ from }) => from);
    expect(blamed, rule).toContain(Object.keys(planted)[0]);
  }
});

test('a tree that obeys is left in peace', () => {
  const files = {
    'src/geom/low.ts': 'export const low = 1;\n',
    'src/solids/door.ts': "import Module from 'manifold-3d';\nimport { low } from '../geom/low.ts';\nexport const door = [Module, low];\n",
    'src/joints/fine/fine.ts':
      "import { part } from './part.ts';\nimport { shared } from '../shared.ts';\nexport const fine = [part, shared];\n",
    'src/joints/fine/part.ts': 'export const part = 1;\n',
    'src/joints/shared.ts': 'export const shared = 1;\n',
    'src/cli/main.ts':
      "import { readFileSync } from 'node:fs';\nimport { door } from '../solids/door.ts';\nexport const main = [readFileSync, door];\n",
    'web/main.tsx':
      "import { useState } from 'react';\nimport url from 'manifold-3d/manifold.wasm?url';\nexport const main = [useState, url];\n",
  };
  const { summary, modules } = withPlanted(files, (root) => cruise(root, ['src', 'web']));
  expect(summary.violations).toEqual([]);
  expect(modules.length).toBeGreaterThan(Object.keys(files).length);
});

test('the linter fires on what the house does not write', () => {
  const found = withPlanted(
    {
      'src/geom/door.ts': "export * from './low.ts';\nexport default 1;\nexport const a = Math.random();\nexport const b = new Date();\n",
      'src/geom/low.ts': "import { x } from './folder';\nexport const low = x;\nconsole.log(x);\n",
      'src/geom/long.ts': 'export const long = [\n' + '  1,\n'.repeat(460) + '];\n',
      'web/hooks.tsx':
        "import { useState } from 'react';\nexport const Hooked = ({ on }: { on: boolean }) => {\n  if (on) useState(1);\n  return null;\n};\n",
    },
    lint,
  );
  for (const sign of [
    /door\.ts.*export \*/,
    /door\.ts.*default/i,
    /door\.ts.*(seed|random)/i,
    /door\.ts.*Date/,
    /low\.ts.*exact file/,
    /low\.ts.*console/,
    /long\.ts.*lines/,
    /hooks\.tsx.*useState/,
  ])
    expect(found).toMatch(sign);
});

test('the core knows no screen, no clock and no process', () => {
  const found = withPlanted(
    {
      'src/geom/a.ts':
        'export const a = [document, console, setTimeout, process];\nexport const b = (x: number[]): number => x[0];\nexport enum C { D }\n',
    },
    (root) => typeCheck(root, 'src'),
  );
  for (const name of ["'document'", "'console'", "'setTimeout'", "'process'"]) expect(found).toContain(name);
  expect(found).toMatch(/a\.ts\(2,.*undefined/);
  expect(found).toMatch(/a\.ts\(3,.*erasable/i);
});

test('each folder of joints/ is a family on the list, and each family has its folder', () => {
  const folders = readdirSync(join(projectRoot, 'src/joints'), { withFileTypes: true }).filter((entry) => entry.isDirectory());
  const names = folders.map(({ name }) => name);
  // In a document a family is written as an id, with underscores; its folder and file are named as files are.
  for (const name of names) expect(readdirSync(join(projectRoot, 'src/joints', name)), `src/joints/${name}`).toContain(`${name}.ts`);
  expect(
    Object.keys(families)
      .map((id) => id.replaceAll('_', '-'))
      .toSorted(),
  ).toEqual(names.toSorted());
});
