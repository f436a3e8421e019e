import { checkFrame } from '../frame-panel/settings.ts';
import { bounds } from '../kit/bounds.ts';
import type { Opening, Trouble } from '../kit/maker.ts';
import { type Neighbour, isTrouble, neighbourAt } from '../kit/neighbours.ts';
import { freeAt, growth, upright } from './gaps.ts';
import { type DoorSettings, settings } from './settings.ts';

/** How far the face of the post may be from flush with the front, mm: the knuckle needs both faces. */
const FLUSH = 2;
/** Least door, mm. */
const LEAST = 100;
/** Least thickness of a post beside or before which a leaf is let in, mm. */
const POST = 10;

/** What the door hangs on: it touches the opening, and its front edge is that of the opening. */
export function hungOn(space: Opening, s: DoorSettings): Neighbour | Trouble {
  const post = neighbourAt(space, 'post', s.post, s.hung as 'left' | 'right' | 'bottom' | 'top', 'part to hang it on');
  if (isTrouble(post)) return post;
  const axis = upright(s) ? 0 : 2;
  const thick = post.box.max[axis] - post.box.min[axis];
  if (post.off > 0.05) return { setting: 'post', cannot: 'the part does not touch the opening', limit: 0, asked: post.off };
  const off = Math.abs(post.box.min[1]);
  const limit = s.lies === 'inset' ? FLUSH : 0.05;
  if (off > limit) return { setting: 'post', cannot: 'the front of the part must be the front of the opening', limit, asked: off };
  if (thick < POST) return { setting: 'post', cannot: 'the part is too thin for hinges', limit: POST, asked: thick };
  return post;
}
/** Outside of the door, mm. */
function doorSize(space: Opening, s: DoorSettings, post: Neighbour): { width: number; height: number } {
  const [across, along] = upright(s) ? [space.width, space.height] : [space.height, space.width];
  const axis = upright(s) ? 0 : 2;
  const thick = post.box.max[axis] - post.box.min[axis];
  const wide = s.lies === 'inset' ? across - s.gap.mm - freeAt(s, across) - growth(s, across) : across + thick + s.over.mm;
  const long = s.lies === 'inset' ? along - 2 * s.gap.mm : along + 2 * s.over.mm;
  return upright(s) ? { width: wide, height: long } : { width: long, height: wide };
}
export function checkDoor(space: Opening, s: DoorSettings, post: Neighbour): Trouble[] {
  const { all, most, least, add } = bounds(space.units, settings);
  least('wettest', 'the wettest season is not drier than the day', s.now, s.wettest, String(Math.ceil(s.now * 10) / 10));
  const size = doorSize(space, s, post);
  const small = Math.min(size.width, size.height);
  if (small < LEAST) {
    add({ setting: '', cannot: `an opening this small holds no such door: {mm:${LEAST}} at least`, limit: LEAST, asked: small });
    return all();
  }
  if (s.lies === 'inset') most('thick', 'the door would stand out behind the opening', space.depth, s.thick.mm);
  // A flap's hinges stand between the stiles of its frame.
  const along = upright(s) ? size.height : size.width - (s.build === 'framed' ? 2 * s.stile.mm : 0);
  const room = Math.max(2, Math.floor((along - 40) / 60));
  most('hinges', 'so many hinges have no room', room, s.hinges, String(room));
  return s.build === 'framed' ? [...all(), ...checkFrame({ ...size, units: space.units }, s)] : all();
}
