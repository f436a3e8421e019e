import type { Contact } from '../family.ts';
import { type Looks, faceToward, flatAt, flatContact, glueAcross } from '../blocks.ts';
import type { Ground, Run, Span } from './lay.ts';
import type { Housing } from './params.ts';

/** Both faces of the shelf against the walls, its end on the bottom, and at each stop the shoulder and the end of the housing. */
export function contacts(g: Ground, r: Run, sizes: Housing): Contact[] {
  const z: Span = [0, sizes.depth];
  const out = [face(g, sizes, 'x-', r.x[0], r.span, z), face(g, sizes, 'x+', r.x[1], r.span, z), bottom(g, r, sizes)];
  if (r.x[0] > g.x[0] + 1e-6) out.push(cheekShoulder(g, sizes, [g.x[0], r.x[0]], r.span, -1));
  if (r.x[1] < g.x[1] - 1e-6) out.push(cheekShoulder(g, sizes, [r.x[1], g.x[1]], r.span, 1));
  if (r.cut[0] > 0) out.push(face(g, sizes, 'y-', r.span[0], r.x, z), shoulder(g, sizes, [g.y[0], r.span[0]]));
  else if (!r.open[0]) out.push(face(g, sizes, 'y-', r.span[0], r.x, z));
  if (r.cut[1] > 0) out.push(face(g, sizes, 'y+', r.span[1], r.x, z), shoulder(g, sizes, [r.span[1], g.y[1]]));
  else if (!r.open[1]) out.push(face(g, sizes, 'y+', r.span[1], r.x, z));
  return out;
}
const dirs = { 'x-': [-1, 0, 0], 'x+': [1, 0, 0], 'y-': [0, -1, 0], 'y+': [0, 1, 0] } as const;
function face(g: Ground, sizes: Housing, looks: keyof typeof dirs, at: number, first: Span, second: Span): Contact {
  const dir = dirs[looks];
  const own = `side ${faceToward(g.enter, dir)}`;
  const cheek = looks[0] === 'x';
  return flatContact({
    name: cheek ? `${own} of the shelf in the housing` : `stopped ${own}`,
    a: { role: 'enter', feature: 'housed end', face: own },
    b: { role: 'into', feature: 'housing', face: `wall ${faceToward(g.into, dir)}` },
    on: flatAt(looks as Looks, at, first, second),
    fit: cheek ? 'slip' : 'loose',
    hold: cheek && sizes.hold === 'glued' ? 'glued' : 'dry',
    glue: glueAcross(dir, g.enter.grain, g.into.grain),
    grain: g.enter.grain,
  });
}
const bottom = (g: Ground, r: Run, sizes: Housing): Contact =>
  flatContact({
    name: 'end of the shelf on the bottom of the housing',
    a: { role: 'enter', feature: 'housed end', face: 'end' },
    b: { role: 'into', feature: 'housing', face: 'bottom' },
    on: flatAt('z+', sizes.depth, r.x, r.span),
    apart: g.gap,
    fit: 'slip',
    hold: sizes.hold === 'glued' ? 'glued' : 'dry',
    glue: glueAcross([0, 0, 1], g.enter.grain, g.into.grain),
    grain: g.enter.grain,
  });
const shoulder = (g: Ground, sizes: Housing, y: Span): Contact =>
  closing(g, sizes, `shoulder at the ${faceToward(g.enter, [0, y[0] < (g.y[0] + g.y[1]) / 2 ? -1 : 1, 0])} stop`, g.x, y);
const cheekShoulder = (g: Ground, sizes: Housing, x: Span, y: Span, sign: 1 | -1): Contact =>
  closing(g, sizes, `${faceToward(g.enter, [sign, 0, 0])} shoulder of the tongue`, x, y);
const closing = (g: Ground, sizes: Housing, name: string, x: Span, y: Span): Contact =>
  flatContact({
    name,
    a: { role: 'enter', feature: 'stock', face: g.enter.end },
    b: { role: 'into', feature: 'stock', face: g.into.end },
    on: flatAt('z+', 0, x, y),
    apart: g.gap,
    fit: 'slip',
    hold: sizes.hold === 'glued' ? 'glued' : 'dry',
    glue: 'end',
    grain: g.enter.grain,
  });
