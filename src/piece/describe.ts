/** The piece as plain records for a screen: parts, joints, named sizes. */
import type { Built } from '../build/build.ts';
import { finishedSize } from '../build/build.ts';
import { blankBox } from '../build/blank.ts';
import type { Extra, Part } from '../build/part.ts';
import { type Box, outBox, unionBox } from '../geom/box.ts';
import { quarterTurn } from '../geom/frame.ts';
import type { Axis } from '../geom/vec3.ts';
import type { Document } from '../model/document.ts';
import { parseExpr, readsOf } from '../model/expr/parse.ts';
import { QUADS, byCodePoint } from '../model/ids.ts';
import { isWood } from '../wood/woods.ts';
import { type Kind, kindsOf } from './kinds.ts';
import { revOf } from './judging.ts';
import type { JointView, PartView, PieceView, SizeView } from './view.ts';

export function describePiece(doc: Document, built: Built, kinds: readonly Kind[] = kindsOf(built.built)): PieceView {
  const b = built.built;
  const letters = new Map(kinds.flatMap((k) => k.parts.map((p) => [p.path, k.letter] as const)));
  const parts = [...b.parts.values()].map((p) => partView(p, letters.get(p.path) ?? ''));
  const extras = [...b.extras.values()].sort((x, y) => byCodePoint(x.path, y.path)).map(extraView);
  const box = [...b.parts.values()]
    .map((p) => outBox(p.frame, blankBox(p.record)))
    .reduce<Box | null>((a, c) => (a ? unionBox(a, c) : c), null);
  const joints: JointView[] = b.places.map((p) => ({
    id: p.joint,
    place: p.place,
    family: p.family.id,
    title: p.family.title,
    parts: Object.values(p.roles).flat(),
    at: p.meeting.frame.o,
  }));
  return { rev: revOf(doc), title: doc.title, units: doc.units, box, parts: [...parts, ...extras], joints, sizes: sizesOf(doc, built) };
}

function partView(p: Part, letter: string): PartView {
  return {
    path: p.path,
    letter,
    label: p.words,
    wood: p.wood,
    kind: isWood(p.wood) ? 'wood' : 'other',
    group: p.group,
    key: p.record.key,
    frame: p.frame,
    stock: p.record.stock,
    grain: p.record.grain,
    finished: finishedSize(p.record, blankBox(p.record)),
    pieces: p.pieces,
  };
}
function extraView(e: Extra): PartView {
  return {
    path: e.path,
    letter: '',
    label: e.words,
    wood: e.record.wood,
    kind: e.hardware ? 'hardware' : 'extra',
    group: null,
    key: e.record.key,
    frame: e.frame,
    stock: e.record.stock,
    grain: e.record.grain,
    finished: finishedSize(e.record, blankBox(e.record)),
    pieces: [e.record.stock],
  };
}

/** Where a size is read: the axis and span of the first part whose width, depth or height it is, else of the first that reads it. */
function sizesOf(doc: Document, built: Built): SizeView[] {
  const uses = usesOf(doc);
  return Object.entries(doc.sizes ?? {}).map(([id, text]): SizeView => {
    const value = built.built.resolution.sizes.get(id);
    const kind = value?.dim === 'angle' ? 'angle' : value?.dim === 'number' ? 'number' : 'length';
    const v = value === undefined ? 0 : value.dim === 'flex' ? value.v * (doc.units === 'in' ? 25.4 : 1) : value.v;
    const used = uses.get(id) ?? [];
    const span = kind === 'length' ? spanOf(used, built, v) : null;
    const usedBy = [...new Set(used.map((u) => u.part))].sort(byCodePoint);
    return {
      id,
      words: id.replaceAll('_', ' '),
      text: String(text),
      value: v,
      kind,
      axis: span?.axis ?? null,
      span: span?.span ?? null,
      usedBy,
    };
  });
}
type Use = { readonly part: string; readonly word: string; readonly alone: boolean };
/** For each size, the words of parts that read it, also through other sizes. */
function usesOf(doc: Document): Map<string, Use[]> {
  const out = new Map<string, Use[]>();
  const reads = (text: unknown): string[] => {
    if (typeof text !== 'string') return [];
    const e = parseExpr(text, doc.units);
    return e.ok ? readsOf(e.expr).flatMap((n) => (n.k === 'size' ? [n.id] : [])) : [];
  };
  const through = (id: string, seen: Set<string>): string[] => {
    if (seen.has(id)) return [];
    seen.add(id);
    return [id, ...reads(doc.sizes?.[id]).flatMap((s) => through(s, seen))];
  };
  for (const kind of ['parts', 'spaces'] as const)
    for (const [part, p] of Object.entries(doc[kind] ?? {}))
      for (const q of QUADS)
        for (const word of [q.low, q.high, q.size, q.mid]) {
          const direct = reads(p[word]);
          const seen = new Set<string>();
          for (const id of direct.flatMap((d) => through(d, seen))) {
            const list = out.get(id) ?? [];
            list.push({ part, word, alone: p[word] === id });
            out.set(id, list);
          }
        }
  return out;
}
function spanOf(uses: readonly Use[], built: Built, value: number): { axis: Axis; span: readonly [number, number] } | null {
  const b = built.built;
  const ranked = [...uses].sort((a, c) => rank(a) - rank(c));
  for (const u of ranked) {
    const qi = QUADS.findIndex((q) => [q.low, q.high, q.size, q.mid].includes(u.word as never)) as 0 | 1 | 2;
    const inst = b.instances.byId.get(u.part)?.[0];
    const r = inst && b.resolution.boxes.get(inst.path);
    if (!inst || !r || inst.kind === 'group') continue;
    const turn = quarterTurn(r.frame);
    if (!turn) continue;
    const world = turn.findIndex((t) => t.own === qi) as 0 | 1 | 2;
    const box = outBox(r.frame, r.box);
    const axis = (['x', 'y', 'z'] as const)[world];
    const whole: readonly [number, number] = [box.min[world], box.max[world]];
    if (u.word === QUADS[qi]?.size) return { axis, span: whole };
    // A face that reads the size: the span ends on that face and is as long as the size.
    const isLow = u.word === QUADS[qi]?.low;
    const low = isLow === (turn[world]?.sign ?? 1) > 0;
    const at = low ? box.min[world] : box.max[world];
    return { axis, span: at >= 0 ? [at - value, at] : [at, at + value] };
  }
  return null;
}
const rank = (u: Use): number => (u.alone ? 0 : 2) + (u.word === 'width' || u.word === 'depth' || u.word === 'height' ? 0 : 1);
