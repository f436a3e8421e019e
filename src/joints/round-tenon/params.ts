import type { Fields } from '../family.ts';

export type RoundTenon = {
  readonly diameter: number;
  /** From where the part's axis enters the receiver, mm; a through tenon is as long as the way through. */
  readonly length: number;
  readonly through: 'no' | 'yes';
  /** How far a through tenon stands out, square to the far face. */
  readonly proud: number;
  readonly wedge: 'none' | 'across' | 'along';
  readonly wedge_thick: number;
  readonly kerf: number;
  readonly spare: number;
  readonly glue: 'yes' | 'no';
};
export const params: Fields<RoundTenon> = {
  diameter: { kind: 'length', words: 'tenon diameter' },
  length: { kind: 'length', words: 'tenon length' },
  through: { kind: 'choice', words: 'does it come out at the far side', options: { no: 'blind', yes: 'through' } },
  proud: { kind: 'length', words: 'how far it stands out' },
  wedge: {
    kind: 'choice',
    words: 'wedge in the end of a through tenon',
    options: {
      none: 'none',
      across: 'across the grain of the part with the hole',
      along: 'along the grain of the part with the hole (splits it)',
    },
  },
  wedge_thick: { kind: 'length', words: 'thick end of the wedge' },
  kerf: { kind: 'length', words: 'width of the saw cut for the wedge' },
  spare: { kind: 'length', words: 'hole deeper than the tenon by' },
  glue: { kind: 'choice', words: 'is it glued', options: { yes: 'glued', no: 'not glued' } },
};
