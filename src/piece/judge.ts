/** Judging with every joint that the shop knows. */
import { families } from './catalog.ts';
import { judging } from './judging.ts';

export const { judge, proving, prove } = judging(families);
