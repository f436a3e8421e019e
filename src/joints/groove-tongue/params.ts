import type { Face } from '../../model/ids.ts';
import type { Fields } from '../family.ts';

export type GrooveTongue = {
  /** Thickness of the tongue, mm; the whole thickness of the panel for a plain one. */
  readonly tongue: number;
  /** The face of the panel that runs on flush into the tongue; none: the tongue stands in the middle. */
  readonly bare: 'none' | Face;
  /** Depth of the groove, mm. */
  readonly depth: number;
  /** Room left between the tongue and the bottom of the groove, mm. */
  readonly spare: number;
  /** How far the shoulders beside the tongue stand off the framed part, mm. */
  readonly clear: number;
  /** End of the grooved part before which the groove stops, by that part's own face. */
  readonly stopped: 'none' | 'both' | Face;
  /** How far from that end it stops, mm; 0: where the tongue ends. */
  readonly stop: number;
  /** Ends of the panel at which the tongue runs on round the corner, to meet the tongue of the next edge. */
  readonly corners: 'none' | 'all' | Face;
  readonly hold: 'loose' | 'glued';
  /** Whether a panel stands in a frame, which stays put, or boards lie edge to edge, where the gap takes what both of them move. */
  readonly joins: 'panel' | 'boards';
};
const faces = (words: string): Record<Face, string> => ({
  left: `${words} left`,
  right: `${words} right`,
  front: `${words} front`,
  back: `${words} back`,
  bottom: `${words} bottom`,
  top: `${words} top`,
});
export const params: Fields<GrooveTongue> = {
  tongue: { kind: 'length', words: 'thickness of the tongue' },
  bare: {
    kind: 'choice',
    words: 'face that is flush with the tongue',
    options: { none: 'shoulders on both sides', ...faces('no shoulder at the') },
  },
  depth: { kind: 'length', words: 'depth of the groove' },
  spare: { kind: 'length', words: 'room behind the tongue' },
  clear: { kind: 'length', words: 'room before the shoulders' },
  stopped: {
    kind: 'choice',
    words: 'end where the groove stops short',
    options: { none: 'through, from end to end', both: 'stopped at both ends', ...faces('stopped at the') },
  },
  stop: { kind: 'length', words: 'how far from the end it stops' },
  corners: {
    kind: 'choice',
    words: 'corners that the tongue fills',
    options: { none: 'as long as the edge', all: 'round both corners', ...faces('round the corner at the') },
  },
  hold: { kind: 'choice', words: 'how the panel is held', options: { loose: 'loose, free to move', glued: 'glued in' } },
  joins: {
    kind: 'choice',
    words: 'what lies along what',
    options: { panel: 'a panel in a frame', boards: 'boards edge to edge, as in a back' },
  },
};
