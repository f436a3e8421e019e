import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Json, Patch } from '../../src/model/finding.ts';
import { applyPatches, sameJson } from '../../src/model/patch.ts';
import { law } from '../support/law.ts';

const doc = (): Json => ({ sizes: { long: '1200', deep: '600' }, parts: { leg: { width: 'leg_w', shape: [{ as: 'taper@1' }] } } });

test('a patch changes one thing and shares the rest', () => {
  const before = doc();
  const r = applyPatches(before, [{ op: 'replace', path: 'sizes/long', value: '1300', was: '1200' }]);
  if (!r.ok) throw new Error(r.problem);
  expect((r.json as { sizes: { long: string } }).sizes.long).toBe('1300');
  expect(before).toEqual(doc());
  expect((r.json as { parts: unknown }).parts).toBe((before as { parts: unknown }).parts);
});
test('a stale patch changes nothing at all', () => {
  const r = applyPatches(doc(), [
    { op: 'replace', path: 'sizes/deep', value: '1' },
    { op: 'replace', path: 'sizes/long', value: '1300', was: '999' },
  ]);
  expect(r.ok).toBe(false);
  if (!r.ok) expect(r.problem).toMatch(/changed meanwhile/);
});
test('an added branch goes again with the undo', () => {
  const r = applyPatches(doc(), [{ op: 'add', path: 'joints/corners/set/end', value: 'mitred' }]);
  if (!r.ok) throw new Error(r.problem);
  expect(r.json).toMatchObject({ joints: { corners: { set: { end: 'mitred' } } } });
  const back = applyPatches(r.json, r.undo);
  if (!back.ok) throw new Error(back.problem);
  expect(back.json).toEqual(doc());
});
test('lists: insert, append, replace, take out', () => {
  const list: Json = { l: ['a', 'b'] };
  const go = (p: Patch): Json => {
    const r = applyPatches(list, [p]);
    if (!r.ok) throw new Error(r.problem);
    const back = applyPatches(r.json, r.undo);
    expect(back.ok && back.json).toEqual(list);
    return r.json;
  };
  expect(go({ op: 'add', path: 'l/-', value: 'c' })).toEqual({ l: ['a', 'b', 'c'] });
  expect(go({ op: 'add', path: 'l/0', value: 'z' })).toEqual({ l: ['z', 'a', 'b'] });
  expect(go({ op: 'replace', path: 'l/1', value: 'q' })).toEqual({ l: ['a', 'q'] });
  expect(go({ op: 'remove', path: 'l/0' })).toEqual({ l: ['b'] });
});
test('no patch reaches into the language itself', () => {
  for (const path of ['__proto__/x', 'constructor/prototype/x', 'parts/__proto__'])
    expect(applyPatches(doc(), [{ op: 'add', path, value: 1 }]).ok).toBe(false);
  expect(({} as { x?: number }).x).toBeUndefined();
});

const key = fc.constantFrom('a', 'b', 'c');
const tree = fc.letrec<{ node: Json }>((tie) => ({
  node: fc.oneof({ depthSize: 'small' }, fc.integer(), fc.string(), fc.dictionary(key, tie('node'), { maxKeys: 3 })),
})).node;
const patch = fc.record({
  op: fc.constantFrom('add' as const, 'replace' as const, 'remove' as const),
  path: fc.array(key, { minLength: 1, maxLength: 3 }).map((k) => k.join('/')),
  value: tree,
});
law(
  'what is applied and undone is as it was',
  fc.property(fc.dictionary(key, tree), fc.array(patch, { maxLength: 8 }), (json, patches) => {
    const r = applyPatches(json as Json, patches as Patch[]);
    if (!r.ok) return;
    const back = applyPatches(r.json, r.undo);
    expect(back.ok && sameJson(back.json, json as Json)).toBe(true);
  }),
);
