import { beforeAll, expect, test } from 'vitest';
import { HOME } from '../../src/geom/frame.ts';
import { heapBytes, kernel, loadKernel } from '../../src/solids/kernel.ts';
import { measure } from '../../src/solids/measure.ts';
import { meshOf } from '../../src/solids/mesh.ts';
import { overlap } from '../../src/solids/pair.ts';
import { dropSolid, liveSolids, withSolids } from '../../src/solids/scope.ts';
import { sectionOf } from '../../src/solids/section.ts';
import type { Solid } from '../../src/solids/solid.ts';
import { heap } from '../../src/cli/bench/heap.ts';
import { block, board, bore, cutOf } from '../support/records.ts';

beforeAll(() => loadKernel());
const part = board(100, 40, 20, [
  block('m', 'remove', [10, 10, 5], [40, 30, 20]),
  bore('h', 'remove', 5, 0, 20, { ...HOME, o: [70, 20, 0] }),
]);

test('everything made in a scope is gone after it, whatever was done, also when it throws', () => {
  withSolids(() => {
    const solid = cutOf(part);
    meshOf(solid);
    sectionOf(solid, HOME);
    overlap(solid, HOME, solid, { ...HOME, o: [1, 1, 1] }, { facets: true });
    expect(liveSolids()).toBeGreaterThan(0);
  });
  expect(liveSolids()).toBe(0);
  expect(() =>
    withSolids(() => {
      cutOf(part);
      throw new Error('stop');
    }),
  ).toThrow('stop');
  expect(liveSolids()).toBe(0);
});

test('a kept solid is the only body that lives on, until it is dropped, and only once', () => {
  const solid = withSolids((scope) => {
    const inner = withSolids((nested) => nested.keep(cutOf(part)));
    expect(liveSolids()).toBe(1);
    scope.own(inner.body.translate(1, 0, 0));
    return inner;
  });
  expect(liveSolids()).toBe(1);
  expect(measure(solid).pieces).toHaveLength(1);
  dropSolid(solid);
  expect(liveSolids()).toBe(0);
  expect(() => dropSolid(solid)).toThrow(/dropped already/);
});

test('a nested scope can keep what an outer one made', () => {
  withSolids(() => {
    const solid: Solid = cutOf(part);
    withSolids((nested) => nested.keep(solid));
    dropSolid(solid);
  });
  expect(liveSolids()).toBe(0);
});

test('a solid made outside any scope, and a scope that waits, are faults of ours', () => {
  expect(() => cutOf(part)).toThrow(/outside withSolids/);
  expect(liveSolids()).toBe(0);
  expect(() => withSolids(async () => {})).toThrow(/asynchronous/);
});

test('rebuilding a piece gives its memory back', () => {
  const figures = heap(40);
  expect(figures.filter((f) => f.limit !== null)).toHaveLength(2);
  for (const f of figures) expect(f, f.figure).toMatchObject({ holds: true });
});

test('solids are read rightly after the kernel’s memory has grown and moved', () => {
  withSolids((scope) => {
    const before = measure(cutOf(part));
    const bytes = heapBytes();
    scope.own(kernel().Manifold.sphere(50, 640)).numTri();
    expect(heapBytes()).toBeGreaterThan(bytes);
    expect(measure(cutOf(part))).toEqual(before);
    expect(measure(cutOf(part))).toEqual(before);
  });
});
