/** The recipe for a joint family in DEVELOPERS.md, taken from the page and put through the contract of all families. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import { buildPiece } from '../../src/build/build.ts';
import type { Family } from '../../src/joints/family.ts';
import { families } from '../../src/joints/families.ts';
import { readDocument } from '../../src/model/parse.ts';
import { shapes } from '../../src/shapes/shapes.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { familyContract } from '../support/family-contract.ts';
import { loadOracle } from '../support/oracle.ts';

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** Each block of code on the page that begins with the path of its file, written out beside the project with its imports led back into it. */
async function recipe(): Promise<Family> {
  const page = readFileSync(at('DEVELOPERS.md'), 'utf8');
  const blocks = [...page.matchAll(/^```ts\n\/\/ (src\/joints\/\S+)\n([\s\S]*?)^```$/gm)];
  expect(blocks.map((b) => b[1])).toEqual(['src/joints/let-in/let-in.ts']);
  const folder = at('.cache/recipe');
  mkdirSync(folder, { recursive: true });
  const file = `${folder}/let-in.ts`;
  writeFileSync(file, (blocks[0]?.[2] ?? '').replaceAll("from '../", `from '${at('src/joints')}/`));
  return ((await import(/* @vite-ignore */ file)) as { letIn: Family }).letIn;
}
const letIn = await recipe();
const among = { ...families, let_in: letIn };

beforeAll(() => Promise.all([loadKernel(), loadOracle()]));
familyContract(letIn, among);

test('a slat between two rails: both pockets, the slat longer by both, a pocket too deep refused with one that works', () => {
  const rail = { wood: 'ash', grain: 'x', midwidth: '0', width: '200', middepth: '0', depth: '45', height: '24' };
  const piece = (depth: string) => {
    const r = readDocument(
      {
        dryfit: 1,
        title: 'Two rails',
        units: 'mm',
        parts: {
          low: { ...rail, bottom: '0' },
          high: { ...rail, bottom: 'slat.top' },
          slat: { wood: 'ash', grain: 'z', midwidth: '0', width: '30', middepth: '0', depth: '10', bottom: 'low.top', height: '150' },
        },
        joints: {
          pockets: {
            as: 'let_in@1',
            places: [
              { enter: 'slat', into: 'low' },
              { enter: 'slat', into: 'high' },
            ],
            set: { depth },
          },
        },
      },
      { families: among, shapes },
    );
    if (!r.ok) throw new Error(r.problems.map((p) => p.what).join());
    return buildPiece(r.doc, among).drawn;
  };
  const built = piece('8');
  expect(built.problems).toEqual([]);
  expect(built.parts.get('slat')?.record.features.filter((f) => f.op === 'add')).toHaveLength(2);
  for (const p of piece('30').places) expect(p.refused).toMatchObject({ limit: 22, asked: 30, nearest: { depth: 8 } });
});
