import { axisVec } from '../../geom/vec3.ts';
import { type FaceName, faceToward, flatAt, flatContact, looking } from '../blocks.ts';
import type { Contact } from '../family.ts';
import { type Bar, type Laid, type Span, depths, isRabbeted, tongue, zAt } from './lay.ts';

const SIGNS = [-1, 1] as const;
/** The lap, the under bar's front against the over bar's sides, and its tongue between the over bar's. */
export function contacts(l: Laid): Contact[] {
  return [lap(l), ...SIGNS.map((sign) => front(l, sign)), ...SIGNS.map((sign) => behind(l, sign))];
}
const glued = (l: Laid): 'glued' | 'dry' => (l.s.hold === 'glued' ? 'glued' : 'dry');
const lap = (l: Laid): Contact =>
  flatContact({
    name: 'lap',
    a: { role: 'over', feature: 'notch', face: 'bottom' },
    b: { role: 'under', feature: 'notch', face: 'bottom' },
    on: flatAt(looking('z', l.face > 0 ? -1 : 1), zAt(l, l.lap), l.g.over.at, tongue(l, l.g.under)),
    fit: 'slip',
    hold: glued(l),
    glue: 'long',
    grain: l.g.over.side.grain,
  });
/** End grain of the under bar's front against the over bar's side, below the moulding. */
const front = (l: Laid, sign: 1 | -1): Contact => {
  const { over, under } = l.g;
  const at = sign > 0 ? over.at[1] : over.at[0];
  return flatContact({
    name: `side of the over bar, ${faceOn(over, sign)}`,
    a: { role: 'over', feature: 'stock', face: faceOn(over, sign) },
    b: { role: 'under', feature: 'notch', face: `wall ${faceToward(under.side, [sign, 0, 0])}` },
    on: flatAt(looking('x', sign), at, under.at, depths(l, l.size, l.lap)),
    fit: 'tap',
    hold: 'dry',
    glue: 'end',
  });
};
const faceOn = (b: Bar, sign: 1 | -1): string => faceToward(b.side, axisVec(b.across, sign));
/** The side of the under bar's tongue against the end grain of the over bar's. */
const behind = (l: Laid, sign: 1 | -1): Contact => {
  const { over, under } = l.g;
  const span: Span = tongue(l, under);
  const face = faceOn(under, sign);
  const mine: FaceName = isRabbeted(l.s)
    ? { role: 'under', feature: `rabbet ${face}`, face: 'tongue' }
    : { role: 'under', feature: 'stock', face };
  return flatContact({
    name: `tongue of the under bar, ${face}`,
    a: mine,
    b: { role: 'over', feature: 'notch', face: `wall ${faceToward(over.side, [0, sign, 0])}` },
    on: flatAt(looking('y', sign), sign > 0 ? span[1] : span[0], tongue(l, over), depths(l, l.lap, l.g.thick)),
    fit: 'tap',
    hold: 'dry',
    glue: 'end',
  });
};
