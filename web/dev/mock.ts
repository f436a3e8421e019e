/** A stand-in for the workers while they are being written: one desk, made here. Development only. */
import Module, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import wasmUrl from 'manifold-3d/manifold.wasm?url';
import type { Box } from '../../src/geom/box.ts';
import type { Frame } from '../../src/geom/frame.ts';
import type { Axis, Vec3 } from '../../src/geom/vec3.ts';
import type { Finding, Json, Patch } from '../../src/model/finding.ts';
import { applyPatches } from '../../src/model/patch.ts';
import type { MeshView, OrderView, PartView, PieceView, SizeView } from '../../src/piece/view.ts';
import type { LayoutView, ToPiece } from '../workers/protocol.ts';
import type { Port } from '../workers/watched.ts';

let k: ManifoldToplevel | null = null;
const inch = 25.4;
const box = (a: Vec3, b: Vec3): Manifold => k!.Manifold.cube([b[0] - a[0], b[1] - a[1], b[2] - a[2]]).translate([a[0], a[1], a[2]]);

function meshOf(key: string, m: Manifold): MeshView {
  const mesh = m.getMesh();
  const n = mesh.numTri;
  const positions = new Float32Array(n * 9), normals = new Float32Array(n * 9), indices = new Uint32Array(n * 3);
  const at = (v: number): Vec3 => [mesh.vertProperties[v * mesh.numProp]!, mesh.vertProperties[v * mesh.numProp + 1]!, mesh.vertProperties[v * mesh.numProp + 2]!];
  const byEdge = new Map<string, { n: Vec3; a: Vec3; b: Vec3 }>();
  const edges: number[] = [];
  for (let t = 0; t < n; t++) {
    const ids = [0, 1, 2].map((i) => mesh.triVerts[t * 3 + i]!);
    const p = ids.map(at) as [Vec3, Vec3, Vec3];
    const u = [0, 1, 2].map((i) => p[1][i]! - p[0][i]!), v = [0, 1, 2].map((i) => p[2][i]! - p[0][i]!);
    let nn: number[] = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
    const l = Math.hypot(...nn);
    nn = nn.map((x) => x / l);
    for (let c = 0; c < 3; c++) {
      positions.set(p[c]!, t * 9 + c * 3);
      normals.set(nn, t * 9 + c * 3);
      indices[t * 3 + c] = t * 3 + c;
      const i = ids[c]!, j = ids[(c + 1) % 3]!;
      const other = byEdge.get(`${j},${i}`);
      if (other) {
        if (other.n[0] * nn[0]! + other.n[1] * nn[1]! + other.n[2] * nn[2]! < 0.94) edges.push(...other.a, ...other.b);
      } else byEdge.set(`${i},${j}`, { n: nn as unknown as Vec3, a: p[c]!, b: p[(c + 1) % 3]! });
    }
  }
  const out: MeshView = { key, positions, normals, indices, triangleFace: new Uint16Array(n), faces: ['stock'], edges: new Float32Array(edges), volume: m.volume(), area: m.surfaceArea(), centre: [0, 0, 0] };
  m.delete();
  return out;
}
type Part = { view: PartView; make: () => Manifold };
const HOME: Frame = { o: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
function boxPart(path: string, letter: string, label: string, wood: string, min: Vec3, max: Vec3, grain: Axis, make?: (size: Vec3) => Manifold, more: Partial<PartView> = {}): Part {
  const size: Vec3 = [max[0] - min[0], max[1] - min[1], max[2] - min[2]];
  const i = 'xyz'.indexOf(grain);
  const rest = [0, 1, 2].filter((j) => j !== i).map((j) => size[j]!).sort((a, b) => b - a);
  const stock: Box = { min: [0, 0, 0], max: size };
  const key = `${letter}:${path.split(':')[0]}:${size.map((s) => s.toFixed(3)).join('x')}:${JSON.stringify(more.key ?? '')}`;
  return {
    view: { path, letter, label, wood, kind: 'wood', group: null, frame: { ...HOME, o: min }, stock, grain, finished: { length: size[i]!, width: rest[0]!, thickness: rest[1]! }, pieces: [stock], ...more, key },
    make: () => make?.(size) ?? box([0, 0, 0], size),
  };
}
function num(json: Json, id: string, or: number): number {
  const sizes = (json as { sizes?: Record<string, Json> }).sizes ?? {};
  const text = String(sizes[id] ?? or);
  const m = /^(\d+)?(?:[\s-]+)?(?:(\d+)\/(\d+))?(?:\.(\d+))?\s*(mm|in)?$/.exec(text);
  let n = Number(text);
  if (Number.isNaN(n) && m) n = Number(m[1] ?? 0) + (m[2] ? Number(m[2]) / Number(m[3]) : 0);
  if (/mm/.test(text)) n = parseFloat(text) / inch;
  return (Number.isFinite(n) ? n : or) * inch;
}
function desk(json: Json) {
  const L = num(json, 'long', 48), D = num(json, 'deep', 24), H = num(json, 'high', 29.5), w = num(json, 'leg_w', 1.75), o = num(json, 'overhang', 1.5);
  const T = num(json, 'thick', 0.75), open = num(json, 'drawer_opening', 20), ah = num(json, 'apron_h', 4.5), tl = num(json, 'tenon', 1.25);
  const at = 22, tt = 9, set = 3, x0 = -L / 2 + o, y0 = -D / 2 + o, h = H - T;
  const parts: Part[] = [];
  const legKey = `A:${[w, h, ah, tl, set].map((n) => n.toFixed(3)).join(':')}`;
  for (const [nx, sx] of [['left', 1], ['right', -1]] as const)
    for (const [ny, sy] of [['front', 1], ['rear', -1]] as const) {
      const frame: Frame = { o: [sx * x0, sy * y0, 0], x: [sx, 0, 0], y: [0, sy, 0], z: [0, 0, 1] };
      const stock: Box = { min: [0, 0, 0], max: [w, w, h] };
      parts.push({
        view: { path: `leg:${nx}:${ny}`, letter: 'A', label: `${ny} ${nx} leg`, wood: 'cherry', kind: 'wood', group: null, key: legKey, frame, stock, grain: 'z', finished: { length: h, width: w, thickness: w }, pieces: [stock] },
        make: () => {
          const m0 = set + at / 2 - tt / 2;
          const taper = k!.Manifold.cube([w * 3, w * 3, h]).translate([0, -w, -h]).rotate([0, 0, 0]);
          let leg = box([0, 0, 0], [w, w, h]);
          const ang = (Math.atan((w - 28) / (h - ah - 10)) * 180) / Math.PI;
          const c1 = taper.rotate([0, -ang, 0]).translate([w, 0, h - ah - 10]);
          const c2 = k!.Manifold.cube([w * 3, w * 3, h]).translate([-w, 0, -h]).rotate([ang, 0, 0]).translate([0, w, h - ah - 10]);
          leg = leg.subtract(c1).subtract(c2);
          leg = leg.subtract(box([w - tl, m0, h - ah + 6], [w + 1, m0 + tt, h - 14])).subtract(box([m0, w - tl, h - ah + 6], [m0 + tt, w + 1, h - 14]));
          return leg;
        },
      });
    }
  const tenoned = (n: Vec3, axis: 0 | 1, extra?: (m: Manifold) => Manifold): Manifold => {
    let m = box([0, 0, 0], n);
    const c = n[1 - axis]! / 2;
    const a: [number, number, number] = [0, 0, 6], b: [number, number, number] = [0, 0, ah - 14];
    a[axis] = -tl; b[axis] = n[axis]! + tl; a[1 - axis] = c - tt / 2; b[1 - axis] = c + tt / 2;
    m = m.add(box(a, b));
    return extra ? extra(m) : m;
  };
  const xa = x0 + w, ya = y0 + w;
  const more = { key: `${ah}${tl}${open}` };
  parts.push(boxPart('front_apron', 'E', 'front apron', 'cherry', [xa, y0 + set, h - ah], [-xa, y0 + set + at, h], 'x', (n) => tenoned(n, 0, (m) => m.subtract(box([n[0] / 2 - open / 2, -1, 19], [n[0] / 2 + open / 2, at + 1, ah - 19]))), more));
  parts.push(boxPart('back_apron', 'D', 'back apron', 'cherry', [xa, -y0 - set - at, h - ah], [-xa, -y0 - set, h], 'x', (n) => tenoned(n, 0), more));
  parts.push(boxPart('side_apron:left', 'B', 'left side apron', 'cherry', [x0 + set, ya, h - ah], [x0 + set + at, -ya, h], 'y', (n) => tenoned(n, 1), more));
  parts.push(boxPart('side_apron:right', 'B', 'right side apron', 'cherry', [-x0 - set - at, ya, h - ah], [-x0 - set, -ya, h], 'y', (n) => tenoned(n, 1), more));
  const staves = 5;
  const pieces = Array.from({ length: staves }, (_, i): Box => ({ min: [0, (D * i) / staves, 0], max: [L, (D * (i + 1)) / staves, T] }));
  parts.push(boxPart('top', 'T', 'top', 'cherry', [-L / 2, -D / 2, h], [L / 2, D / 2, H], 'x', undefined, { pieces }));
  const dh = ah - 38 - 3, dw = open - 3, dd = 380;
  const dz = h - ah + 20.5, dy = y0 + set;
  parts.push(boxPart('drawer_front', 'G', 'drawer front', 'cherry', [-dw / 2, dy - 1, dz], [dw / 2, dy + 19, dz + dh], 'x', (n) => box([0, 0, 0], n).add(k!.Manifold.sphere(13, 40).scale([1, 0.9, 1]).translate([n[0] / 2, -11, n[2] / 2]))));
  for (const s of [-1, 1]) parts.push(boxPart(`drawer_side:${s < 0 ? 'left' : 'right'}`, 'H', `${s < 0 ? 'left' : 'right'} drawer side`, 'maple', [s < 0 ? -dw / 2 : dw / 2 - 12, dy + 19, dz], [s < 0 ? -dw / 2 + 12 : dw / 2, dy + dd, dz + dh], 'y'));
  parts.push(boxPart('drawer_back', 'J', 'drawer back', 'maple', [-dw / 2 + 12, dy + dd - 12, dz + 12], [dw / 2 - 12, dy + dd, dz + dh], 'x'));
  parts.push(boxPart('drawer_bottom', 'K', 'drawer bottom', 'maple', [-dw / 2 + 12, dy + 19, dz + 4], [dw / 2 - 12, dy + dd - 12, dz + 12], 'x'));
  for (let i = 0; i < 8; i++) {
    const x = xa + 120 + (i % 4) * ((-2 * xa - 240 - 30) / 3), front = i < 4;
    parts.push(boxPart(`fix/${i + 1}/button`, 'N', `button ${i + 1}`, 'ash', [x, front ? y0 + set + at : -y0 - set - at - 40, h - 22], [x + 30, front ? y0 + set + at + 40 : -y0 - set - at, h], 'y', undefined, { kind: 'extra' }));
  }
  return { parts, L, D, H, w, o, h, T, open, ah, tl, x0, y0, set, at };
}
function viewOf(rev: string, json: Json): PieceView {
  const d = desk(json);
  const span = (id: string, words: string, axis: Axis | null, s: [number, number] | null, value: number, usedBy: string[] = []): SizeView => ({
    id, words, text: String((json as { sizes: Record<string, Json> }).sizes[id] ?? ''), value, kind: 'length', axis, span: s, usedBy });
  const { L, D, H, w, o, x0, h, T } = d;
  return {
    rev, title: String((json as { title: Json }).title), units: 'in', box: { min: [-L / 2, -D / 2, 0], max: [L / 2, D / 2, H] }, parts: d.parts.map((p) => p.view),
    joints: [{ id: 'corners', place: 0, family: 'mortise_tenon', title: 'Mortise and tenon', parts: ['front_apron', 'leg:left:front'], at: [0, 0, 0] }],
    sizes: [
      span('long', 'end to end', 'x', [-L / 2, L / 2], L, ['top']),
      span('overhang', 'overhang', 'x', [-L / 2, x0], o, ['top', 'leg:left:front']),
      span('leg_w', 'leg', 'x', [x0, x0 + w], w, ['leg:left:front']),
      span('between', 'between the legs', 'x', [x0 + w, -x0 - w], -2 * (x0 + w), ['front_apron', 'back_apron']),
      span('drawer_opening', 'drawer opening', 'x', [-d.open / 2, d.open / 2], d.open, ['front_apron', 'drawer_front']),
      span('deep', 'front to back', 'y', [-D / 2, D / 2], D, ['top']),
      span('high', 'floor to top', 'z', [0, H], H, ['top']),
      span('thick', 'top', 'z', [h, H], T, ['top']),
      span('apron_h', 'apron', 'z', [h - d.ah, h], d.ah, ['front_apron']),
      span('tenon', 'tenon', null, null, d.tl, ['front_apron']),
    ].filter((s) => s.id !== 'between').concat([{ ...span('between', 'between the legs', 'x', [x0 + w, -x0 - w], -2 * (x0 + w), ['front_apron', 'back_apron']), text: 'long - 2 * (overhang + leg_w)' }]),
  };
}
function findingsOf(json: Json): Finding[] {
  const d = desk(json);
  const out: Finding[] = [];
  const m0 = d.set + d.at / 2 - 4.5;
  const share = m0 + 9 - (d.w - d.tl);
  const where = { at: [-d.x0 - m0 - 3, d.y0 + m0 + 3, d.h - d.ah / 2 - 4] as Vec3, reach: 30, cut: [0, 0, 1] as Vec3 };
  const proof = { removes: ['x'], adds: [], rev: '' };
  if (share > 0)
    out.push({
      key: 'tenons-meet:leg:right:front', rule: 'tenons-meet', grade: 'stops', title: 'Two tenons in the same wood', parts: ['leg:right:front', 'front_apron', 'side_apron:right'], joint: 'corners', where,
      measured: share, limit: 0, unit: 'mm', basis: 'drawn', why: `In the front right leg the tenons share {mm:${share}}, over {mm:${d.ah - 20}} of height. They may touch; they may not share.`,
      source: { name: 'two solids cannot stand in one place', basis: 'derived' },
      remedies: [
        { label: 'Shorten both to {mm:26.9875}', consequence: 'Still three times their thickness.', patches: [{ op: 'replace', path: 'sizes/tenon', value: '7/8 in' }], proof },
        { label: 'Make the legs thicker by {mm:6.35}', consequence: 'Keeps {mm:31.75} of tenon.', patches: [{ op: 'replace', path: 'sizes/leg_w', value: '2 1/4' }], proof },
      ],
    });
  out.push({
    key: 'top-swell', rule: 'top-swell', grade: 'trouble', title: 'The top has no room to swell', parts: ['top', 'fix/1/button'], where: { at: [-100, d.y0 + 30, d.h], reach: 40, cut: [1, 0, 0] }, measured: 2.4, limit: 0.8, unit: 'mm', basis: 'computed',
    why: 'It needs {mm:2.38125} at the front by the dampest month; the buttons leave {mm:0.79375}.', source: { name: 'common practice', basis: 'common practice' }, remedies: [{ label: 'Open the slots to {mm:4.7625}', patches: [{ op: 'add', path: 'sizes/overhang', value: '1 1/2' }], proof }] });
  out.push({
    key: 'swap', rule: 'swap', grade: 'note', title: 'The side aprons can be swapped', parts: ['side_apron:left', 'side_apron:right'], where: { at: [-d.x0 - 10, 0, d.h - 60], reach: 30 }, measured: 0, limit: 0, unit: 'none', basis: 'drawn',
    why: 'Either fits both sides: mark them before glue.', source: { name: 'common practice', basis: 'common practice' }, remedies: [] });
  return out;
}
function orderOf(p: PieceView): OrderView {
  const apart: Record<string, { step: number; offset: Vec3 }[]> = {};
  const steps = [
    { move: ['drawer_side:left'], along: [1, 0, 0] as Vec3, distance: 100, words: 'left drawer side onto the drawer front, from the back' },
    { move: ['drawer_side:right'], along: [1, 0, 0] as Vec3, distance: 100, words: 'right drawer side onto the drawer front, from the back' },
    { move: ['drawer_bottom'], along: [0, -1, 0] as Vec3, distance: 100, words: 'drawer bottom into the sides, from behind' },
    { move: ['side_apron:left'], along: [1, 0, 0] as Vec3, distance: 100, words: 'left side apron into the front left leg, from the back' },
    { move: ['side_apron:right'], along: [1, 0, 0] as Vec3, distance: 100, words: 'right side apron into the front right leg, from the back' },
    { move: ['front_apron'], along: [1, 0, 0] as Vec3, distance: 100, words: 'front apron into the left legs, from the right' },
    { move: ['back_apron'], along: [1, 0, 0] as Vec3, distance: 100, words: 'back apron into the left legs, from the right' },
    { move: ['leg:right:front', 'leg:right:rear', 'side_apron:right'], along: [-1, 0, 0] as Vec3, distance: 100, words: 'right end onto both aprons, from the right' },
    { move: ['drawer_front'], along: [0, 1, 0] as Vec3, distance: 100, words: 'drawer into its opening, from the front' },
    { move: ['top'], along: [0, 0, -1] as Vec3, distance: 100, words: 'top onto the frame, from above' },
  ];
  for (const part of p.parts) {
    const list: { step: number; offset: Vec3 }[] = [];
    const n = part.path;
    const sx = /right/.test(n) ? 1 : /left/.test(n) ? -1 : 0, sy = /rear/.test(n) ? 1 : /front/.test(n) ? -1 : 0;
    if (n.startsWith('leg')) list.push({ step: 7, offset: [sx * 260, 0, 0] }, { step: 3, offset: [0, sy * 120, 0] });
    if (n.startsWith('side')) list.push({ step: 7, offset: [sx * 260, 0, 0] });
    if (n === 'top') list.push({ step: 9, offset: [0, 0, 260] });
    if (n === 'back_apron') list.push({ step: 6, offset: [0, 120, 0] });
    if (n === 'front_apron') list.push({ step: 5, offset: [0, -120, 0] });
    if (n.startsWith('drawer')) list.push({ step: 8, offset: [0, -430, 0] });
    if (n.startsWith('fix')) list.push({ step: 9, offset: [0, 0, 130] });
    if (n.startsWith('drawer_side')) list.push({ step: 0, offset: [sx * 60, 60, 0] });
    apart[n] = list;
  }
  return { possible: true, steps, stages: [{ name: 'drawer', steps: [0, 1, 2] }, { name: 'ends', steps: [3, 4] }, { name: 'front and back', steps: [5, 6, 7] }, { name: 'top', steps: [8, 9] }], apart };
}
function layoutOf(p: PieceView): LayoutView {
  const rect = (letter: string, label: string, paths: string[], x: number, y: number, length: number, width: number) => ({ letter, label, paths, x, y, length, width });
  const L = 1240;
  const b = (id: string, words: string, wood: string, length: number, width: number, placements: ReturnType<typeof rect>[], kept: { x: number; y: number; length: number; width: number }[] = []) => ({
    id, wood, words, length, width, thickness: 26, placements, kept, defects: [{ x: length - 90, y: width / 2 - 12, length: 50, width: 24 }], pith: [-10, -70] as const });
  void p;
  return {
    boards: [
      b('1', '4/4', 'cherry', 2640, 178, [rect('T', 'top', ['top'], 40, 12, L, 128), rect('T', 'top', ['top'], 40 + L + 4, 12, L, 128)], [{ x: 1700, y: 148, length: 700, width: 26 }]),
      b('2', '4/4', 'cherry', 2600, 170, [rect('T', 'top', ['top'], 40, 12, L, 128), rect('T', 'top', ['top'], 40 + L + 4, 12, L, 128)]),
      b('3', '4/4', 'cherry', 2500, 170, [rect('T', 'top', ['top'], 40, 12, L, 128), rect('D', 'back apron', ['back_apron'], 40 + L + 60, 12, 1120, 120)]),
      b('4', '4/4', 'cherry', 2400, 160, [rect('B', 'side apron', ['side_apron:left'], 40, 12, 560, 120), rect('B', 'side apron', ['side_apron:right'], 604, 12, 560, 120), rect('E', 'front apron', ['front_apron'], 1168, 12, 1120, 120)]),
      b('5', '8/4', 'cherry', 1600, 120, [rect('A', 'leg', ['leg:left:front'], 30, 8, 740, 48), rect('A', 'leg', ['leg:left:rear'], 30, 60, 740, 48), rect('A', 'leg', ['leg:right:front'], 780, 8, 740, 48), rect('A', 'leg', ['leg:right:rear'], 780, 60, 740, 48)]),
      b('6', '4/4', 'maple', 1150, 160, [rect('H', 'drawer side', ['drawer_side:left'], 20, 10, 440, 62), rect('H', 'drawer side', ['drawer_side:right'], 20, 78, 440, 62), rect('J', 'drawer back', ['drawer_back'], 470, 10, 520, 62)], [{ x: 470, y: 80, length: 600, width: 60 }]),
    ],
    unplaced: [], yield: 0.68, bound: { boards: 6, proved: true }, buy: ['cherry 4/4: 4 boards, 23 board feet', 'cherry 8/4: 1 board, 4 board feet'],
  };
}
export const MOCK_DOC = JSON.stringify({ dryfit: 1, title: 'Writing desk', units: 'in', sizes: { long: '48', deep: '24', high: '29 1/2', leg_w: '1 3/4', overhang: '1 1/2', thick: '3/4', drawer_opening: '20', apron_h: '4 1/2', tenon: '1 1/4' } });

export function mockPort(): Port {
  const listeners: ((e: MessageEvent) => void)[] = [];
  let json: Json = null, rev = '', sent = new Set<string>(), ended = false;
  const say = (data: unknown): void => void (!ended && setTimeout(() => !ended && listeners.forEach((l) => l({ data } as MessageEvent)), 0));
  const run = async (): Promise<void> => {
    k ??= await Module({ locateFile: () => wasmUrl }).then((m) => (m.setup(), m));
    const mine = rev;
    const bad = Object.entries((json as { sizes: Record<string, Json> }).sizes).find(([, v]) => String(v).includes('nope'));
    if (bad) return say({ kind: 'trouble', rev: mine, problems: [{ where: `sizes/${bad[0]}`, what: `nothing is called "nope"`, nearest: 'long' }] });
    const piece = viewOf(mine, json);
    say({ kind: 'piece', rev: mine, piece });
    const findings = findingsOf(json);
    const verdict = { rev: mine, verdict: findings.some((f) => f.grade === 'stops') ? 'not-yet' : 'together', findings, counts: { parts: piece.parts.length, joints: 24 } };
    say({ kind: 'verdict', rev: mine, verdict: { ...verdict, wave: 1 } });
    const fresh = desk(json).parts.filter((p) => !sent.has(p.view.key) && sent.add(p.view.key));
    say({ kind: 'meshes', rev: mine, meshes: fresh.map((p) => meshOf(p.view.key, p.make())) });
    say({ kind: 'verdict', rev: mine, verdict: { ...verdict, wave: 2 } });
    say({ kind: 'order', rev: mine, order: orderOf(piece) });
    const by = new Map<string, PartView[]>();
    for (const p of piece.parts) by.set(p.letter, [...(by.get(p.letter) ?? []), p]);
    say({ kind: 'rows', rev: mine, rows: [...by].map(([letter, ps]) => ({ part: ps[0]!.label, letter, count: ps.length, wood: ps[0]!.wood, paths: ps.map((p) => p.path), finished: ps[0]!.finished, rough: { length: ps[0]!.finished.length + 25, width: ps[0]!.finished.width + 6, thickness: ps[0]!.finished.thickness + 6 } })) });
    say({ kind: 'layout', rev: mine, layout: layoutOf(piece), final: true });
    say({ kind: 'settled', rev: mine });
  };
  return {
    postMessage(raw) {
      const m = raw as ToPiece;
      if (m.kind === 'ping') say({ kind: 'pong', n: m.n });
      if (m.kind === 'open') ((json = JSON.parse(m.text) as Json), (rev = m.rev), void run());
      if (m.kind === 'change') {
        const done = applyPatches(json, m.patches as Patch[]);
        if (!done.ok) return say({ kind: 'whole', rev: m.rev });
        json = done.json;
        rev = m.rev;
        void run();
      }
      if (m.kind === 'forget') sent = new Set([...sent].filter((s) => !m.keys.includes(s)));
    },
    addEventListener(type: string, l: unknown) {
      if (type === 'message') listeners.push(l as (e: MessageEvent) => void);
    },
    terminate() {
      ended = true;
    },
  };
}
