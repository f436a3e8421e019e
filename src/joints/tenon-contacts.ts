/** Where the shoulders round tenons close on the part that they enter; the same whatever the tenons are. */
import { type Vec3, dot } from '../geom/vec3.ts';
import { faceToward, flatAt, flatContact } from './blocks.ts';
import type { Contact } from './family.ts';
import { frameAlong } from './features.ts';
import type { Meeting } from './meeting.ts';
import type { Ground, Span } from './tenons.ts';

export type Mouths = {
  /** All tenons together, across the thickness and over the width. */
  readonly x: Span;
  readonly y: Span;
  /** Across the thickness one by one, where there are several. */
  readonly twins?: readonly Span[];
  /** The own face of the entering part at which there is no shoulder, as a haunch stands there. */
  readonly without?: string;
};
/** One contact for each strip of shoulder round the tenons where the faces are square, one for the whole where they are slanted. */
export function shoulders(m: Meeting, g: Ground, mouths: Mouths): Contact[] {
  if (m.patch.length < 3) return [];
  const trim = g.enter.shapes.find((f) => f.why === 'trim');
  const a = {
    role: 'enter',
    ...(trim ? { feature: trim.name, face: Object.keys(trim.faces)[0] ?? 'plane' } : { feature: 'stock', face: g.enter.end }),
  };
  const b = { role: 'into', feature: 'stock', face: g.into.end };
  const base = { fit: 'slip', hold: 'dry', glue: 'end' } as const;
  if (!g.square) {
    if (Math.abs(dot(m.shoulder.normal, m.face.normal) + 1) > 1e-9) return [];
    const at = frameAlong([0, 0, 0], m.shoulder.normal);
    const far = { ...at, o: [0, 0, m.gap] as Vec3 };
    const patch = m.patch.map((q) => [q[0] * at.x[0] + q[1] * at.x[1], q[0] * at.y[0] + q[1] * at.y[1]] as const);
    return [
      {
        name: 'shoulder',
        between: [
          { ...a, surface: { plane: m.shoulder, patch, patchFrame: at } },
          { ...b, surface: { plane: m.face, patch, patchFrame: far } },
        ],
        meant: 0,
        ...base,
      },
    ];
  }
  return strips(m, g, mouths)
    .filter(([word, u, v]) => u[1] - u[0] > 0.01 && v[1] - v[0] > 0.01 && word !== mouths.without)
    .map(([word, u, v]) => flatContact({ name: `shoulder ${word}`, a, b, on: flatAt('z+', 0, u, v), apart: g.gap, ...base }));
}
function strips(m: Meeting, g: Ground, { x: t, y: all, twins = [] }: Mouths): [string, Span, Span][] {
  const span = (i: 0 | 1): Span => [Math.min(...m.patch.map((q) => q[i])), Math.max(...m.patch.map((q) => q[i]))];
  const [x, y] = [span(0), span(1)];
  return [
    [faceToward(g.enter, [-1, 0, 0]), [x[0], Math.min(t[0], x[1])], y],
    [faceToward(g.enter, [1, 0, 0]), [Math.max(t[1], x[0]), x[1]], y],
    [faceToward(g.enter, [0, -1, 0]), t, [y[0], Math.min(all[0], y[1])]],
    [faceToward(g.enter, [0, 1, 0]), t, [Math.max(all[1], y[0]), y[1]]],
    ...twins.slice(1).map((b, i): [string, Span, Span] => {
      const a = twins[i] ?? b;
      return [twins.length > 2 ? `between twins ${i + 1}` : 'between the twins', a[0] < b[0] ? [a[1], b[0]] : [b[1], a[0]], all];
    }),
  ];
}
