/** The benches do what they say they measure; how long it takes is for `npm run bench`. */
import { beforeAll, expect, test } from 'vitest';
import { bareCut, bareMesh, barePair } from '../../src/cli/bench/bare.ts';
import { edit } from '../../src/cli/bench/edit.ts';
import { editOf } from '../../src/cli/bench/edits.ts';
import { familiesBench } from '../../src/cli/bench/families.ts';
import { type Figure, figure } from '../../src/cli/bench/figure.ts';
import { heap } from '../../src/cli/bench/heap.ts';
import { pairs } from '../../src/cli/bench/pairs.ts';
import { openSession } from '../../src/cli/bench/session.ts';
import { shelving } from '../../src/cli/bench/shelving.ts';
import { HOME } from '../../src/geom/frame.ts';
import { families } from '../../src/piece/catalog.ts';
import { verdictOf } from '../../src/piece/judging.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { liveSolids } from '../../src/solids/scope.ts';
import { block, board, bore } from '../support/records.ts';

beforeAll(() => loadKernel());

const valueOf = (all: readonly Figure[], name: RegExp): number => all.find((f) => name.test(f.figure))?.value ?? Number.NaN;

test('the piece of the benches has 60 parts and 110 joints and goes together, also after every kind of edit', () => {
  const session = openSession(shelving());
  for (let n = 0; n < 46; n++) {
    const j = session.edit(editOf(n));
    expect(j.built.built.parts.size).toBe(60);
    expect(j.built.built.places.length).toBe(110);
    expect(verdictOf(j), JSON.stringify(editOf(n))).toBe('together');
  }
  session.close();
  expect(liveSolids()).toBe(0);
});
test('every edit leaves a piece that was not there before', () => {
  const all = Array.from({ length: 500 }, (_, n) => JSON.stringify(editOf(n)));
  expect(new Set(all).size).toBe(500);
});
test('a few edits, measured: what reached the kernel is repeated bare, and nothing is left in memory', () => {
  const figures = edit(8, 4);
  expect(valueOf(figures, /^edits/)).toBe(8);
  expect(valueOf(figures, /recut/)).toBeGreaterThan(0);
  expect(valueOf(figures, /pairs tried/)).toBeGreaterThan(0);
  for (const f of figures) expect(f.value, f.figure).toBeGreaterThan(0);
  expect(figures.filter((f) => f.limit !== null).map((f) => f.bench)).toEqual(['edit', 'edit, pegged']);
  expect(liveSolids()).toBe(0);
});
test('pairs are counted alike with and without our door', () => {
  const figures = pairs(70, 1);
  expect(valueOf(figures, /pairs tried/)).toBeGreaterThan(100);
  expect(valueOf(figures, /overlaps found/)).toBeGreaterThan(0);
  expect(liveSolids()).toBe(0);
});
test('every family is measured against bare calls that find the same volumes, and so is a board with twenty tails', () => {
  const figures = familiesBench(1);
  expect(figures.map((f) => f.figure.split(':')[0])).toEqual([...Object.keys(families), 'board with twenty tails']);
  for (const f of figures) expect(f.value, f.figure).toBeGreaterThan(0);
  expect(liveSolids()).toBe(0);
});
test('rebuilt again and again, the piece leaves no solid behind', () => {
  const figures = heap(30);
  expect(valueOf(figures, /alive/)).toBe(0);
  expect(valueOf(figures, /rebuilds/)).toBe(30);
});
test('the bare calls cut what the record says: 100 x 50 x 20 less a mortise and a bore, and a tenon more', () => {
  const mortise = block('mortise', 'remove', [10, 10, 5], [40, 20, 21]);
  const tenon = block('tenon', 'add', [99, 10, 5], [120, 20, 15]);
  const hole = bore('hole', 'remove', 5, 0, 20, { ...HOME, o: [70, 25, 0] });
  const body = bareCut(board(100, 50, 20, [mortise, tenon, hole]));
  // A circle of 64 chords: 32 r² sin(360°/64).
  const bored = 32 * 25 * Math.sin(Math.PI / 32) * 20;
  expect(body.volume()).toBeCloseTo(100_000 - 30 * 10 * 15 + 20 * 10 * 10 - bored, 3);
  expect(bareMesh(body)).toBe(body.numTri());
  const other = bareCut(board(100, 50, 20));
  expect(barePair(other, other, { ...HOME, o: [90, 0, 0] })).toBeCloseTo(10 * 50 * 20, 6);
  expect(barePair(other, other, { ...HOME, o: [100, 0, 0] })).toBeCloseTo(0, 6);
  for (const b of [body, other]) b.delete();
});
test('a figure holds when it does not exceed its limit', () => {
  expect(figure('b', 'f', 1.5, 'ratio', 1.5).holds).toBe(true);
  expect(figure('b', 'f', 1.6, 'ratio', 1.5).holds).toBe(false);
  expect(figure('b', 'f', 1e9, 'ms').holds).toBe(true);
});
