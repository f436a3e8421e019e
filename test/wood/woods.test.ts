import { expect, test } from 'vitest';
import { SPECIES } from '../../src/wood/species.ts';
import { toneOf } from '../../src/wood/tones.ts';
import { isSoftwood, isWood, sameWood, nearestWood, woodNames, woodOf } from '../../src/wood/woods.ts';

test('at least forty timbers, ids unique, every figure with basis and source', () => {
  expect(SPECIES.length).toBeGreaterThanOrEqual(40);
  expect(new Set(SPECIES.map((s) => s.id)).size).toBe(SPECIES.length);
  for (const s of SPECIES) {
    const figures = [
      s.shrinkage.radial,
      s.shrinkage.tangential,
      s.shrinkage.volumetric,
      s.change?.radial,
      s.change?.tangential,
      s.gravity,
      s.stiffness,
      s.bending,
      s.hardness,
    ];
    for (const f of figures) {
      if (!f) continue;
      expect(f.value, s.id).toBeGreaterThan(0);
      expect(['read', 'read-secondhand', 'memory', 'memory-uncertain']).toContain(f.basis);
      expect(f.source.length, s.id).toBeGreaterThan(5);
    }
  }
});

test('wood moves more along the rings than across them, in every row', () => {
  for (const s of SPECIES) {
    expect(s.shrinkage.tangential.value, s.id).toBeGreaterThan(s.shrinkage.radial.value);
    if (s.change) expect(s.change.tangential.value, s.id).toBeGreaterThan(s.change.radial.value);
  }
});

// Wood Handbook FPL-GTR-190 Table 4-3 (shrinkage green to oven-dry, per cent) and Table 13-5 (coefficients), rows read.
test.each([
  ['cherry', 3.7, 7.1, 0.00126, 0.00248],
  ['walnut', 5.5, 7.8, 0.0019, 0.00274],
  ['white_oak', 5.6, 10.5, 0.0018, 0.00365],
  ['ash', 4.9, 7.8, 0.00169, 0.00274],
  ['basswood', 6.6, 9.3, 0.0023, 0.0033],
])('%s as published', (name, radial, tangential, cr, ct) => {
  const w = woodOf(name);
  if (w.kind !== 'species') throw new Error(`${name} is not in the list`);
  expect(w.species.shrinkage.radial.value).toBe(radial);
  expect(w.species.shrinkage.tangential.value).toBe(tangential);
  expect(w.species.change?.radial.value).toBe(cr);
  expect(w.species.change?.tangential.value).toBe(ct);
});

test('names as makers write them', () => {
  for (const name of [
    'cherry',
    'ash',
    'walnut',
    'white_oak',
    'beech',
    'elm',
    'pear',
    'pine',
    'oak',
    'maple',
    'Hard Maple',
    'red oak',
    'Douglas-fir',
  ])
    expect(woodOf(name).kind, name).toBe('species');
  expect(sameWood('Black Cherry', 'cherry')).toBe(true);
  expect(sameWood('white oak', 'red oak')).toBe(false);
  expect(isSoftwood('pine')).toBe(true);
  expect(isSoftwood('elm')).toBe(false);
});

test('every short name leads to a timber or to another stuff', () => {
  for (const name of woodNames()) expect(woodOf(name).kind, name).not.toBe('own');
});

test('an unknown wood is the maker’s own, with the name that may have been meant', () => {
  expect(woodOf('chery')).toEqual({ kind: 'own', id: 'chery' });
  expect(nearestWood('chery')).toBe('cherry');
  expect(nearestWood('cherry')).toBeNull();
  expect(nearestWood('bog oak from the fen')).toBeNull();
  expect(woodOf('bog oak from the fen').kind).toBe('own');
  expect(woodOf('')).toMatchObject({ kind: 'own', id: 'wood' });
  expect(woodOf('__proto__').kind).toBe('own');
  expect(woodOf('constructor').kind).toBe('own');
  expect(isWood('bog oak')).toBe(true);
});

test('stuff that is not wood', () => {
  expect(woodOf('plywood')).toEqual({ kind: 'other', id: 'plywood', of: 'sheet' });
  for (const name of ['glass', 'stone', 'metal', 'upholstery', 'leather']) expect(isWood(name)).toBe(false);
});

/** Lightness of CIE L*a*b* from an sRGB colour (IEC 61966-2-1 transfer, D65), 0…100. */
function lightness(hex: string): number {
  const [r, g, b] = [1, 3, 5]
    .map((i) => parseInt(hex.slice(i, i + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)) as [number, number, number];
  const y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
  return y > 0.008856 ? 116 * Math.cbrt(y) - 16 : 903.3 * y;
}
test('every timber and stuff has a light and a dark tone that can be told apart', () => {
  for (const name of [...SPECIES.map((s) => s.id), 'bubinga', 'plywood', 'glass', 'stone', 'metal', 'leather']) {
    const t = toneOf(name);
    expect(t.light, name).toMatch(/^#[0-9a-f]{6}$/);
    expect(t.dark, name).toMatch(/^#[0-9a-f]{6}$/);
    expect(lightness(t.light) - lightness(t.dark), name).toBeGreaterThan(isWood(name) ? 5 : 0);
  }
  expect(lightness(toneOf('maple').light)).toBeGreaterThan(lightness(toneOf('walnut').light) + 25);
  expect(toneOf('glass').grain).toBe('none');
});
