/** The one-file page as text: its policy, its record, its words. How it behaves in a browser: test/web/client-page.test.ts. */
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { base64 } from '../../src/exports/base64.ts';
import { type ClientData, clientData } from '../../src/exports/client-data.ts';
import { clientPage } from '../../src/exports/client-page.ts';
import { plainName } from '../../src/exports/names.ts';
import { sha256 } from '../../src/exports/sha256.ts';
import { HOME } from '../../src/geom/frame.ts';
import { unpack } from '../../web/client/data.ts';
import { law } from '../support/law.ts';

const BOX = { min: [0, 0, 0], max: [508, 304.8, 19.05] } as const;
const part = (label: string, wood: string) =>
  ({ path: 'board', label, wood, kind: 'wood', key: 'k', frame: HOME, stock: BOX, grain: 'x', pieces: [BOX] }) as const;
const empty: ClientData = { title: 'Board', units: 'in', box: BOX, parts: [part('board', 'white_oak')], meshes: [], order: null };

test('sums as FIPS 180-4 and its published examples have them', () => {
  const hex = (text: string): string => Buffer.from(sha256(Buffer.from(text))).toString('hex');
  // NIST, Cryptographic Standards: example values of SHA-256 for "abc" and the two-block message.
  expect(hex('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  expect(hex('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq')).toBe(
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  );
});
law('sums and base64 agree with those of Node', fc.uint8Array({ maxLength: 300 }), (bytes) => {
  expect(Buffer.from(sha256(bytes)).toString('hex')).toBe(createHash('sha256').update(bytes).digest('hex'));
  expect(base64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
});

test('the policy lets in the one script by its sum and nothing else', () => {
  const viewer = 'document.title += "é";';
  const page = clientPage(empty, [], viewer);
  const policy = /Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1] ?? '';
  expect(policy).toContain("default-src 'none'");
  expect(policy).toContain(`script-src 'sha256-${createHash('sha256').update(viewer).digest('base64')}'`);
  expect(policy).not.toMatch(/unsafe|https?:|\*/);
  // The policy must stand before what it is to govern.
  expect(page.indexOf('Content-Security-Policy')).toBeLessThan(page.indexOf('<script'));
  expect(() => clientPage(empty, [], 'a("</Script>")')).toThrow('ends a script');
});
test('size in the units of the piece, woods in words, equal things on one line', () => {
  const rows = [
    { words: 'leg', count: 2, wood: 'white_oak' },
    { words: 'leg', count: 2, wood: 'white oak' },
    { words: 'top', count: 1, wood: 'ash' },
  ];
  const page = clientPage({ ...empty, parts: [part('leg', 'white_oak'), part('leg', 'white oak'), part('top', 'ash')] }, rows, '');
  const text = page
    .replaceAll(/<script[^]*?<\/script>/g, '')
    .replaceAll(/<[^>]*>/g, '')
    .replaceAll(/\s+/g, ' ');
  expect(text).toContain('20 in wide, 12 in deep, 3⁄4 in high in white oak and ash');
  expect(text).toContain('4 × leg, white oak 1 × top, ash');
  expect(clientPage({ ...empty, units: 'mm' }, [], '')).toContain('<b>508 mm</b> wide');
  const one = clientPage(empty, [{ words: 'board', count: 1, wood: 'white_oak' }], '');
  expect(one).toContain('<bdi>board</bdi></li>');
});
law('no name gets out of its place', fc.string({ unit: 'binary' }), (name) => {
  const hostile = `</script><script>${name}`;
  const data = clientData({ ...empty, title: hostile, parts: [part(hostile, hostile)] }, [], null);
  const page = clientPage(data, [{ words: hostile, count: 1, wood: hostile }], 'void 0');
  expect(page.match(/<script/g)).toHaveLength(2);
  expect(page.match(/<\/script/g)).toHaveLength(2);
  const carried = JSON.parse(/id="piece">([^]*)<\/script>/.exec(page)?.[1] ?? '') as ClientData;
  expect(carried.title).toBe(plainName(hostile));
});
test('a name without anything to read still has words', () => {
  for (const none of ['', '   ', '\t']) expect(plainName(none)).not.toBe('');
  expect(plainName('a\u0000b\u202Ec\ud800d')).toBe('a\ufffdb\ufffdc\ufffdd');
  expect([...plainName('🪑'.repeat(300))].every((c) => c === '🪑' || c === '…' || c === '\ufffd')).toBe(true);
});
law(
  'meshes come back as they went in',
  fc.array(fc.float({ noNaN: true, noDefaultInfinity: true, min: -5000, max: 5000 }), { minLength: 9, maxLength: 90 }),
  (numbers) => {
    const positions = Float32Array.from(numbers.slice(0, numbers.length - (numbers.length % 9)));
    const normals = Float32Array.from(positions, (_, i) => Math.sin(i));
    const indices = Uint32Array.from({ length: positions.length / 3 }, (_, i) => i);
    const data = clientData({ title: 't', units: 'mm', box: null, parts: [] }, [{ key: 'k', positions, normals, indices }], null);
    const back = unpack(JSON.parse(JSON.stringify(data)) as ClientData).meshes.get('k');
    expect(back?.positions).toEqual(positions);
    expect(back?.indices).toEqual(indices);
    back?.normals.forEach((n, i) => expect(n).toBeCloseTo(normals[i] ?? 0, 4));
  },
);
