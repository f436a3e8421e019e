/** Every family against the contract. */
import { readdirSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { families } from '../../src/joints/families.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { familyContract } from '../support/family-contract.ts';
import { loadOracle } from '../support/oracle.ts';

beforeAll(() => Promise.all([loadKernel(), loadOracle()]));

const kebab = (id: string): string => id.replaceAll('_', '-');
test('each folder of src/joints is a listed family, and each listed family a folder', () => {
  const folders = readdirSync(new URL('../../src/joints', import.meta.url), { withFileTypes: true })
    .filter((f) => f.isDirectory())
    .map((f) => f.name);
  expect(Object.keys(families).map(kebab).sort()).toEqual(folders.sort());
});
for (const family of Object.values(families)) familyContract(family, families);
