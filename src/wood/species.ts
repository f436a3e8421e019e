/**
 * Timbers as published: shrinkage, moisture coefficients, density and strength, each figure with its basis and source. Figures whose
 * basis is 'memory' or 'memory-uncertain' were not checked against a copy of the publication; no test asserts the uncertain ones.
 * The kind of grain (ring-porous and so on) is general wood anatomy, from memory throughout.
 */
import type { Species } from './figures.ts';
import { ABROAD } from './species-abroad.ts';
import { AMERICAN } from './species-america.ts';

export const SPECIES: readonly Species[] = [...AMERICAN, ...ABROAD];
