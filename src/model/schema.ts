/** The grammar as JSON Schema (draft 2020-12), for editors and other programs; published in public/. */
import { z } from 'zod';
import { documentSchema } from './document.ts';

export function jsonSchema(): Record<string, unknown> {
  const made = z.toJSONSchema(documentSchema, { io: 'input' }) as Record<string, unknown>;
  return {
    ...made,
    title: 'Dryfit piece',
    description:
      'One piece of furniture as a maker describes it. Beyond what a schema can say: exactly two of low face, high face, size and middle on each axis; one set of names for sizes, spaces, groups and parts.',
  };
}
