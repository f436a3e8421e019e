import { middleOf, sizeOf } from '../geom/box.ts';
import { outPoint } from '../geom/frame.ts';
import { signature } from '../model/part-record.ts';
import { type Check, finding } from './check.ts';

/** A part that is already cut, and that the document would now make differently. */
export const cutAlready: Check = {
  id: 'cut-already',
  wave: 1,
  bySize: ['cut-already'],
  words: 'A part that is already cut would now be made differently.',
  run: (facts) =>
    [...facts.built.built.parts.values()].flatMap((p) => {
      if (!p.frozen || p.frozen.now.key === p.record.key) return [];
      const was = sizeOf(p.record.stock);
      const now = sizeOf(p.frozen.now.stock);
      const by = [0, 1, 2].map((i) => (now[i] ?? 0) - (was[i] ?? 0));
      const most = by.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
      const axis = by.indexOf(most);
      const old = new Set(p.record.features.map((f) => signature(f)));
      const changed = p.frozen.now.features.filter((f) => !old.has(signature(f))).length;
      const size = ['wide', 'deep', 'high'][axis] ?? 'long';
      return [
        finding({
          rule: 'cut-already',
          grade: 'stops',
          title: 'Already cut, and no longer the same',
          parts: [p.path],
          where: { at: outPoint(p.frame, middleOf(p.record.stock)), reach: Math.max(...was) / 2 },
          measured: Math.abs(most) > 1e-6 ? Math.abs(most) : changed,
          limit: 0,
          unit: Math.abs(most) > 1e-6 ? 'mm' : 'count',
          basis: 'measured',
          why:
            Math.abs(most) > 1e-6
              ? `The ${p.words} is already cut at {mm:${was[axis] ?? 0}} ${size}. The sizes now in force would make it {mm:${Math.abs(most)}} ${most > 0 ? 'more' : 'less'}.`
              : `The ${p.words} is already cut, and ${changed === 1 ? 'one of its cuts' : `${changed} of its cuts`} would now be made elsewhere or otherwise.`,
          source: { name: 'the record kept when the part was cut', basis: 'derived' },
        }),
      ];
    }),
};
