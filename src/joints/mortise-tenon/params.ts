import type { Fields } from '../family.ts';

export type MortiseTenon = {
  /** Across the entering part's thickness (the meeting's x), mm. */
  readonly thickness: number;
  /** Of each tenon, across the entering part's width (y), mm. */
  readonly width: number;
  /** From the shoulder to the long end, mm. */
  readonly length: number;
  /** Tenons side by side over the width (one above the other on a rail), and the wood left out between two of them. */
  readonly tenons: number;
  readonly between: number;
  /** Tenons side by side in the thickness, and the wood left out between two of them. */
  readonly twins: number;
  readonly twin_between: number;
  /** Middle of the tenon from the middle of the thickness; or, from a face, the shoulder on that side: 0 leaves the tenon bare there. */
  readonly offset: number;
  readonly from: 'middle' | 'face' | 'low' | 'high';
  /** How far the middle of the tenons lies below (towards the low face of) the middle of the width, mm. */
  readonly drop: number;
  readonly shoulders: 'all' | 'broad' | 'top' | 'bottom';
  readonly end: 'square' | 'mitred';
  readonly through: 'no' | 'yes';
  /** How far a through tenon stands out at the back, mm. */
  readonly proud: number;
  /** As short as a groove is deep, over the full width: the rail of a panelled frame that is held by its groove. */
  readonly stub: 'no' | 'yes';
  readonly haunch: 'none' | 'square' | 'sloped';
  readonly haunch_length: number;
  readonly wedge: 'none' | 'across' | 'along';
  /** In each tenon. */
  readonly wedges: number;
  readonly wedge_thick: number;
  /** Wedged blind: the wedges stand in the tenon's kerfs and are driven by the bottom of the mortise. */
  readonly fox: 'no' | 'yes';
  /** How much wider a wedged mortise is at its far end, on each side that is pressed, mm. */
  readonly flare: number;
  readonly pegs: number;
  readonly peg_diameter: number;
  /** Middle of the peg from the face that the shoulder closes on, mm. */
  readonly peg_back: number;
  readonly peg_length: number;
  /** How much nearer the shoulder the tenon is bored, mm. */
  readonly drawbore: number;
  /** How much higher the pegs of rails in a post's front and back stand than those of rails in its other faces, so that they pass each other, mm. */
  readonly peg_stagger: number;
  /** How much deeper than the tenon the mortise is, mm. */
  readonly spare: number;
  readonly glue: 'yes' | 'no';
};
export const params: Fields<MortiseTenon> = {
  thickness: { kind: 'length', words: 'tenon thickness' },
  width: { kind: 'length', words: 'tenon width' },
  length: { kind: 'length', words: 'tenon length' },
  tenons: { kind: 'count', words: 'tenons one above the other over the width' },
  between: { kind: 'length', words: 'wood left out between tenons' },
  twins: { kind: 'count', words: 'tenons side by side in the thickness' },
  twin_between: { kind: 'length', words: 'wood left out between twin tenons' },
  offset: { kind: 'length', words: 'offset across the thickness' },
  from: {
    kind: 'choice',
    words: 'what the offset counts from',
    options: {
      middle: 'the middle of the thickness, to the middle of the tenon',
      face: 'the face side (the part’s mark), to the nearer cheek; 0 leaves it bare there',
      low: 'the part’s left, front or lower face, to the nearer cheek',
      high: 'the part’s right, back or upper face, to the nearer cheek',
    },
  },
  drop: { kind: 'length', words: 'how far the tenon lies below the middle of the width' },
  shoulders: {
    kind: 'choice',
    words: 'where a shoulder is left',
    options: {
      all: 'on all four sides',
      broad: 'on the two broad sides only',
      top: 'on the broad sides and the upper edge',
      bottom: 'on the broad sides and the lower edge',
    },
  },
  end: { kind: 'choice', words: 'end of the tenon', options: { square: 'cut square', mitred: 'mitred against the tenon that it meets' } },
  through: { kind: 'choice', words: 'does it come out at the back', options: { no: 'blind', yes: 'through' } },
  proud: { kind: 'length', words: 'how far it stands out at the back' },
  stub: { kind: 'choice', words: 'length by', options: { no: 'the receiving part', yes: 'the depth of a groove: a stub' } },
  haunch: {
    kind: 'choice',
    words: 'haunch',
    options: {
      none: 'none',
      square: 'square, open at the end of the receiving part: it fills a groove there',
      sloped: 'sloped, hidden at the end of the receiving part',
    },
  },
  haunch_length: { kind: 'length', words: 'length of the haunch' },
  wedge: {
    kind: 'choice',
    words: 'wedges in the end of the tenon',
    options: { none: 'none', across: 'across the grain of the mortised part', along: 'along the grain of the mortised part (splits it)' },
  },
  wedges: { kind: 'count', words: 'wedges in each tenon' },
  wedge_thick: { kind: 'length', words: 'thick end of a wedge' },
  fox: {
    kind: 'choice',
    words: 'wedged in a blind mortise',
    options: { no: 'no: wedges need a through tenon', yes: 'fox wedges, driven by the bottom of the mortise' },
  },
  flare: { kind: 'length', words: 'mortise wider at its far end, each side' },
  pegs: { kind: 'count', words: 'pegs through it' },
  peg_diameter: { kind: 'length', words: 'peg diameter' },
  peg_back: { kind: 'length', words: 'peg from the joint face' },
  peg_length: { kind: 'length', words: 'peg length' },
  drawbore: { kind: 'length', words: 'drawbore offset' },
  peg_stagger: { kind: 'length', words: 'pegs in front and back faces of a post higher by' },
  spare: { kind: 'length', words: 'mortise deeper than the tenon by' },
  glue: { kind: 'choice', words: 'is it glued', options: { yes: 'glued', no: 'not glued' } },
};
