/** The published JSON Schema is the one of the code; accept a change of the grammar with `npx vitest run test/model/schema.test.ts -u`. */
import { expect, test } from 'vitest';
import { jsonSchema } from '../../src/model/schema.ts';

test('public/dryfit.schema.json says what the code reads', async () => {
  await expect(`${JSON.stringify(jsonSchema(), null, 2)}\n`).toMatchFileSnapshot('../../public/dryfit.schema.json');
});
test('it is a schema of objects that refuse unknown keys', () => {
  const s = jsonSchema() as { properties: Record<string, { additionalProperties?: unknown }>; additionalProperties: unknown };
  expect(s.additionalProperties).toBe(false);
  expect(Object.keys(s.properties)).toEqual(
    expect.arrayContaining(['dryfit', 'title', 'units', 'sizes', 'spaces', 'groups', 'parts', 'joints', 'bench', 'placed']),
  );
});
