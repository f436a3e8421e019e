/** What a document may name: all joint families and shapes, with what the model must know of them. */
import type { Families } from '../build/build.ts';
import { families as list } from '../joints/families.ts';
import type { Catalog } from '../model/catalog.ts';
import { shapes } from '../shapes/shapes.ts';

export const families: Families = list;
export const catalog: Catalog = { families: list, shapes };
