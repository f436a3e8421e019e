import type { Face } from '../../model/ids.ts';
import type { Fields } from '../family.ts';

export type SlidingDovetail = {
  /** How deep the tail stands in the other board, mm. */
  readonly depth: number;
  /** How far the slanted sides lean from square, radians. */
  readonly slope: number;
  /** Which sides of the tail slant: both, or the one at the face named. */
  readonly slanted: 'both' | Face;
  /** How far the neck is set in from the board's face on each slanted side, mm. */
  readonly shoulder: number;
  /** Edge of the board that enters last: the tail slides in from there. */
  readonly from: Face;
  /** How much narrower the tail is at the end that goes in first, mm; 0 parallel. */
  readonly taper: number;
  /** How far the socket stops short of the edge that it would come out of, mm; 0 through. */
  readonly stop: number;
  readonly hold: 'glued' | 'end' | 'dry';
  /** Length glued where it is glued at the end that goes in first alone, mm. */
  readonly glued: number;
};
export const params: Fields<SlidingDovetail> = {
  depth: { kind: 'length', words: 'depth of the socket' },
  slope: { kind: 'angle', words: 'slope of the tail, as an angle from square' },
  slanted: {
    kind: 'choice',
    words: 'sides of the tail that slant',
    options: {
      both: 'both sides',
      left: 'the left side alone',
      right: 'the right side alone',
      front: 'the front side alone',
      back: 'the back side alone',
      bottom: 'the under side alone',
      top: 'the upper side alone',
    },
  },
  shoulder: { kind: 'length', words: 'width of the shoulder at a slanted side' },
  from: {
    kind: 'choice',
    words: 'edge that goes in last',
    options: {
      back: 'the back: it slides in towards the front',
      front: 'the front: it slides in towards the back',
      left: 'the left',
      right: 'the right',
      bottom: 'the bottom: it slides up',
      top: 'the top: it slides down',
    },
  },
  taper: { kind: 'length', words: 'how much the tail narrows to the end that goes in first' },
  stop: { kind: 'length', words: 'how far the socket stops short of the far edge' },
  hold: {
    kind: 'choice',
    words: 'how it is held',
    options: { glued: 'glued all along', end: 'glued at the end that goes in first alone', dry: 'dry, the tail alone holds it' },
  },
  glued: { kind: 'length', words: 'length that is glued at that end' },
};
