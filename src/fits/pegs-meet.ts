import type { Build, Extra, JointPlace } from '../build/part.ts';
import { roleKey } from '../build/part.ts';
import { compose, outDir, outPoint } from '../geom/frame.ts';
import { loopPoints } from '../geom/loop.ts';
import { type Vec3, unit } from '../geom/vec3.ts';
import type { Feature } from '../model/record.ts';
import type { Finding, Remedy } from '../model/finding.ts';
import { type Check, type Facts, exactText, finding, lengthKept, lengthTick, partsOf, remedy, setPatch, the } from './check.ts';
import { once } from './once.ts';
import { type Block, type Rod, blockSpan, rodInBlock, rodSpan, rodsBite } from './rods.ts';

/**
 * Pegs of two rails that meet in one post: two that cross each other, and one that goes through the tenon of the other rail. A peg that is
 * meant to hold a part names it among its own.
 */
export const pegsMeet: Check = {
  id: 'pegs-meet',
  wave: 1,
  words: 'Two pegs cross each other, or a peg cuts a tenon that it should not hold.',
  run: (facts) => [...clashes(facts.built.built)].map((c) => describe(facts, c)),
};

type Peg = { readonly extra: Extra; readonly place: JointPlace; readonly rod: Rod };
type Clash = {
  readonly peg: Peg;
  /** The other peg, or the part whose tenon is cut. */
  readonly other: Peg | { readonly path: string; readonly place: JointPlace; readonly block: Block };
  readonly deep: number;
  readonly host: string;
};
/** Less is a touch, mm. */
const TOUCH = 0.05;
const CHORDS = 24;

const clashes = once((b: Build): readonly Clash[] => {
  const byHost = new Map<string, JointPlace[]>();
  for (const p of b.places) if (p.made) for (const path of new Set(partsOf(p))) byHost.set(path, [...(byHost.get(path) ?? []), p]);
  const out: Clash[] = [];
  const told = new Set<string>();
  for (const [host, places] of byHost) {
    if (places.length < 2) continue;
    const pegs = places.flatMap((p) => pegsOf(b, p));
    const found = pegs.flatMap((peg, i) => [...crossed(peg, pegs.slice(i + 1), host), ...cutTenons(peg, places, host)]);
    for (const c of found) {
      const key = pairOf(c);
      if (!told.has(key)) out.push(c);
      told.add(key);
    }
  }
  return out;
});
const crossed = (peg: Peg, others: readonly Peg[], host: string): Clash[] =>
  others.flatMap((other) => {
    const deep = other.place === peg.place ? 0 : rodsBite(peg.rod, other.rod);
    return deep > TOUCH ? [{ peg, other, deep, host }] : [];
  });
const cutTenons = (peg: Peg, places: readonly JointPlace[], host: string): Clash[] =>
  places.flatMap((place) =>
    partsOf(place).some((path) => path !== host && partsOf(peg.place).includes(path))
      ? []
      : tenonsIn(place, host).flatMap(({ path, block }) => {
          const deep = rodInBlock(peg.rod, block);
          return deep > TOUCH ? [{ peg, other: { path, place, block }, deep, host }] : [];
        }),
  );
const pairKey = (a: string, b: string): string => (a < b ? `${a} ${b}` : `${b} ${a}`);
const pairOf = (c: Clash): string => pairKey(c.peg.extra.path, 'extra' in c.other ? c.other.extra.path : c.other.path);
/** Pairs of a peg and what it meets that are told of here: the solids need not say it again. */
export const pegsTold = once((b: Build): ReadonlySet<string> => new Set(clashes(b).map(pairOf)));

/** Round pins that hold the place, in the world. */
function pegsOf(b: Build, place: JointPlace): Peg[] {
  const made = place.made;
  if (!made) return [];
  return made.extras.flatMap((e, i): Peg[] => {
    const side = made.contacts
      .filter((c) => c.hold === 'pinned')
      .flatMap((c) => c.between)
      .find((s) => s.role === 'extra' && (s.index ?? 0) === i && 'round' in s.surface);
    const extra = side && b.extras.get(`${place.joint}/${place.place}/${e.name.replaceAll(' ', '_')}`);
    if (!extra || !('round' in side.surface)) return [];
    const { min, max } = extra.record.stock;
    const at = outPoint(extra.frame, [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, min[2]]);
    return [{ extra, place, rod: { at, along: unit(outDir(extra.frame, [0, 0, 1])), long: max[2] - min[2], r: side.surface.r } }];
  });
}
/** What parts of a place let into the host, as solids in the world. */
function tenonsIn(place: JointPlace, host: string): { path: string; block: Block }[] {
  return Object.entries(place.roles).flatMap(([role, paths]) =>
    paths.flatMap((path, i) =>
      path === host
        ? []
        : (place.made?.features[roleKey(place.family, role, i)] ?? [])
            .filter((f) => f.op === 'add')
            .flatMap((f) => blockOf(place, f).map((block) => ({ path, block }))),
    ),
  );
}
function blockOf(place: JointPlace, f: Feature): Block[] {
  const s = f.solid;
  if (s.kind !== 'prism' || s.profileTo) return [];
  const at = compose(place.meeting.frame, f.at);
  const ring = loopPoints(s.profile[0] ?? [], CHORDS).points;
  const points = ring.flatMap((q): Vec3[] => [outPoint(at, [q[0], q[1], s.from]), outPoint(at, [q[0], q[1], s.to])]);
  const sides = ring.flatMap((p, i): Vec3[] => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return Math.hypot(q[0] - p[0], q[1] - p[1]) < 1e-9 ? [] : [unit(outDir(at, [q[1] - p[1], p[0] - q[0], 0]))];
  });
  return [{ points, normals: [...sides, unit(at.z)] }];
}

function describe(facts: Facts, c: Clash): Finding {
  const two = 'extra' in c.other;
  const [mine, host] = [the(facts, c.peg.extra.path), the(facts, c.host)];
  const other = 'extra' in c.other ? the(facts, c.other.extra.path) : `the tenon of ${the(facts, c.other.path)}`;
  const rod = c.peg.rod;
  return finding({
    rule: two ? 'pegs-cross' : 'peg-cuts-tenon',
    grade: 'stops',
    title: two ? 'Two pegs cross each other' : 'A peg cuts the other tenon',
    parts: [c.host, c.peg.extra.path, 'extra' in c.other ? c.other.extra.path : c.other.path],
    where: {
      at: [0, 1, 2].map((i) => (rod.at[i] ?? 0) + ((rod.along[i] ?? 0) * rod.long) / 2) as unknown as Vec3,
      reach: Math.max(20, rod.long / 2),
    },
    measured: c.deep,
    limit: 0,
    unit: 'mm',
    basis: 'computed',
    why: two
      ? `In ${host} ${mine} and ${other} want {mm:${c.deep}} of the same wood: the second one to be driven cannot pass.`
      : `In ${host} ${mine} goes {mm:${c.deep}} into ${other}, which it should not hold: it locks both rails, and cuts that tenon.`,
    source: { name: 'computed from the parts', basis: 'derived' },
    remedies: [...shifted(facts, c.peg, c), ...('extra' in c.other ? shifted(facts, c.other, c) : []), ...eased(facts, c.peg.place)],
  });
}
/** Air left between what met, mm. */
const CLEAR = 2;
/** One of them higher or lower: by `up`, which the pegs of a place have of their own, or by `peg_stagger`, which sets rails on two faces apart. */
function shifted(facts: Facts, peg: Peg, c: Clash): Remedy[] {
  const { place } = peg;
  const other = 'extra' in c.other ? (c.other === peg ? c.peg : c.other) : c.other;
  const key = (['peg_stagger', 'up'] as const).find((k) => place.family.params[k]?.kind === 'length');
  const was = key && place.sizes?.[key];
  if (!key || typeof was !== 'number') return [];
  const up = unit(place.meeting.frame.y);
  const mine = rodSpan(peg.rod, up);
  const its = 'rod' in other ? rodSpan(other.rod, up) : blockSpan(other.block, up);
  const ways = [its[1] - mine[0] + CLEAR, mine[1] - its[0] + CLEAR];
  // Staggered, both pegs of one joint move by half, a peg of another joint alone.
  const share = key === 'up' ? 1 : 'rod' in other && other.place.joint === place.joint ? 1 : 2;
  const unitOf = facts.doc.units;
  return [...new Set(ways)]
    .flatMap((by) => [1, -1].map((sign) => ({ by, sign })))
    .map(({ by, sign }) => {
      const far = Math.ceil(by / lengthTick(unitOf) - 1e-6) * lengthTick(unitOf);
      const to = was + sign * share * lengthKept(far, unitOf);
      const text = to < 0 ? `-${exactText(-to, unitOf)}` : exactText(to, unitOf);
      return remedy(
        `Set ${the(facts, peg.extra.path)} {mm:${far}} ${sign > 0 ? 'higher' : 'lower'}`,
        setPatch(facts.doc, place.joint, key, text),
        share === 1 && key === 'peg_stagger'
          ? 'The pegs on the other faces go the other way by half of it.'
          : 'All pegs of the joint move.',
      );
    });
}
/** What was set by hand let go again: a peg as long and as far back as the rule has it may well pass. */
function eased(facts: Facts, place: JointPlace): Remedy[] {
  const set = facts.doc.joints?.[place.joint]?.set ?? {};
  const keys = ['peg_length', 'peg_back', 'length', 'back'].filter((k) => Object.hasOwn(set, k) && Object.hasOwn(place.family.params, k));
  const pegs = keys.filter((k) => k.startsWith('peg_') || !Object.hasOwn(place.family.params, 'peg_length'));
  return pegs.length
    ? [
        remedy(
          'Let the length and the place of the pegs follow the tenon',
          pegs.flatMap((k) => setPatch(facts.doc, place.joint, k, null)),
        ),
      ]
    : [];
}
