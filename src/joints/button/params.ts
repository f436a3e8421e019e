import type { Fields } from '../family.ts';

export type Button = {
  readonly count: number;
  /** Middle of the first and last button from the ends of the rail, mm. */
  readonly inset: number;
  /** The button's size along the rail, mm. */
  readonly width: number;
  /** From its shoulder to its heel, mm. */
  readonly length: number;
  /** Thickness of its tongue, and how far that stands out of the shoulder, mm. */
  readonly tongue: number;
  readonly reach: number;
  /** Wood of the rail above the slot, mm. */
  readonly lip: number;
  /** Room between the shoulder and the rail, for a top that moves across the rail, mm. */
  readonly room: number;
  /** How much longer than the button the slot is at each end, for a top that moves along the rail, mm. */
  readonly allow: number;
  /** How much the button stands off the top before its screw draws it up, mm. */
  readonly draw: number;
  readonly slot: 'mortises' | 'groove';
  /** How far a groove stops short of each end of the rail, mm, so that it stays clear of the tenons; 0: it runs out. */
  readonly stop: number;
  /** Which way the button's grain runs: from the screw to the tongue, or across that. */
  readonly grain: 'along' | 'across';
  readonly screw: number;
  readonly screw_length: number;
};
export const params: Fields<Button> = {
  count: { kind: 'count', words: 'buttons on the rail' },
  inset: { kind: 'length', words: 'first button from the end of the rail' },
  width: { kind: 'length', words: 'width of a button' },
  length: { kind: 'length', words: 'length of a button behind its tongue' },
  tongue: { kind: 'length', words: 'thickness of the tongue' },
  reach: { kind: 'length', words: 'length of the tongue' },
  lip: { kind: 'length', words: 'wood of the rail above the slot' },
  room: { kind: 'length', words: 'room before the button’s shoulder' },
  allow: { kind: 'length', words: 'slot longer than the button at each end' },
  draw: { kind: 'length', words: 'how far the screw draws down' },
  slot: {
    kind: 'choice',
    words: 'how the rail is slotted',
    options: { mortises: 'a short mortise for each button', groove: 'one groove along the whole rail' },
  },
  stop: { kind: 'length', words: 'groove short of the ends of the rail' },
  grain: {
    kind: 'choice',
    words: 'grain of the buttons',
    options: { along: 'from the screw to the tongue', across: 'across the button: the tongue breaks off' },
  },
  screw: { kind: 'length', words: 'diameter of the screws' },
  screw_length: { kind: 'length', words: 'length of the screws' },
};
