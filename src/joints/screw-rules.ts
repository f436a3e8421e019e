/** The rules of the trade on screws in wood; every family with a row of them reads these. */
import type { Source } from '../model/finding.ts';
import { isWood } from '../wood/woods.ts';
import { alongGrain } from './blocks.ts';
import type { Place, Rule, Warning } from './family.ts';
import { HABIT } from './reasons.ts';
import { CHARTS, type RowGround, type Sizes, edgeDistances, specOf } from './screw-rows.ts';
import { type Spot, biteOf } from './screws.ts';

/** What the rules look at: `moves` is how far the wood moves each way at the farthest screw, mm, and how far its slot lets it. */
export type Rowed = {
  readonly g: RowGround;
  readonly s: Sizes;
  readonly spots: readonly Spot[];
  readonly moves: { readonly need: number; readonly has: number };
  /** Which settings, handed back, let the slots follow the wood. */
  readonly slotKeys: readonly string[];
};
const PLAY = 0.05;
const WALLED: Source = { name: 'common practice: about 3 mm of wood stay behind a hole', basis: 'common practice' };
const MOVES: Source = { name: 'woodworkingtips.com: up to 1/8 in for each 12 in of width', basis: 'read' };
type Said = Omit<Warning, 'rule' | 'unit' | 'at' | 'roles'> & Partial<Pick<Warning, 'unit' | 'at' | 'roles'>>;
const given = (keys: readonly string[]): Record<string, null> => Object.fromEntries(keys.map((k) => [k, null]));

export function screwRules<P>(read: (p: Place<P>, s: P) => Rowed | null): Rule<P>[] {
  const rule = (id: string, words: string, say: (r: Rowed) => Said | null): Rule<P> => ({
    id,
    words,
    run: (p, sizes) => {
      const r = read(p, sizes);
      const said = r && say(r);
      if (!r || !said) return [];
      const { through, into } = r.g.bed;
      return [{ rule: id, unit: 'mm', at: [...(r.spots[0]?.at ?? [0, 0]), 0], roles: [through.role, into.role], ...said }];
    },
  });
  return [
    rule('pilot hole breaks through', 'a pilot hole leaves about 3 mm of wood behind it', ({ g, s, spots }) => {
      const left = g.deep - s.pilot_depth;
      const least = Math.min(3, g.deep / 4);
      if (left >= least - PLAY) return null;
      const far: Warning['at'] = [...(spots[0]?.at ?? [0, 0]), g.bed.into.face + g.deep];
      return {
        grade: 'trouble',
        title: left > 0 ? 'The pilot holes nearly come through' : 'The pilot holes come through',
        why: `They are {mm:${s.pilot_depth}} deep in {mm:${g.deep}} of wood; the tip of the screw shows or lifts the face.`,
        measured: left,
        limit: least,
        source: WALLED,
        at: far,
        roles: [g.bed.into.role],
        cures: [
          { label: 'bore no deeper than the screws reach', set: { pilot_depth: null } },
          { label: 'let screws and holes follow the parts', set: given(['pilot_depth', 'length', 'sink']) },
        ],
      };
    }),
    rule(
      'screw holds too little',
      'at least half of a screw is in the part that holds, two thirds where that is thick enough',
      ({ g, s }) => {
        const bite = biteOf(g.bed, specOf(s));
        if (bite >= s.length / 2 - PLAY) return null;
        return {
          grade: 'trouble',
          title: 'Too little of the screws is in the part that holds',
          why: `Of {mm:${s.length}} only {mm:${bite}} is in the second part; it strips out under load.`,
          measured: bite,
          limit: s.length / 2,
          source: HABIT,
          roles: [g.bed.into.role],
          cures: [
            { label: 'let the length follow the parts', set: given(['length', 'pilot_depth']) },
            { label: 'let length and counterbore follow the parts', set: given(['length', 'pilot_depth', 'sink', 'head', 'bore']) },
          ],
        };
      },
    ),
    rule(
      'screw slot short',
      'a slot lets the wood move as far as it will: about 1/8 in for each 12 in from where it is fast',
      ({ g, moves, slotKeys }) => {
        if (moves.has >= moves.need - PLAY) return null;
        return {
          grade: 'trouble',
          title: moves.has > PLAY ? 'The slots are too short' : 'The screws hold the wood fast',
          why: `At the farthest screw the wood moves about {mm:${moves.need}} each way; the hole there lets it go {mm:${Math.max(0, moves.has)}}. It splits, or bends the screws.`,
          measured: Math.max(0, moves.has),
          limit: moves.need,
          source: MOVES,
          roles: [g.bed.through.role, g.bed.into.role],
          cures: [{ label: 'let the slots follow the wood', set: given(slotKeys) }],
        };
      },
    ),
    rule(
      'screw near the edge',
      'a screw stands at least one and a half of its diameter from an edge, five from an end',
      ({ g, s, spots }) => {
        const parts = [g.bed.through.side, g.bed.into.side].filter((x) => isWood(x.wood)).map((x) => edgeDistances(x, spots));
        const [end, edge] = [Math.min(...parts.map((x) => x.end)), Math.min(...parts.map((x) => x.edge))];
        const split = edge < 1.5 * s.diameter - PLAY;
        if (!split && end >= 5 * s.diameter - PLAY) return null;
        return {
          grade: split ? 'trouble' : 'note',
          title: split ? 'The screws stand near an edge' : 'The screws stand near an end',
          why: split
            ? `{mm:${edge}} from the middle of a screw to the edge: the wood splits out.`
            : `{mm:${end}} from the middle of a screw to the end of a board: without a full pilot hole it splits along the grain.`,
          measured: split ? edge : end,
          limit: (split ? 1.5 : 5) * s.diameter,
          source: CHARTS,
          cures: [{ label: 'let the screws follow the parts', set: given(['inset', 'off', 'count', 'diameter', 'clearance', 'pilot']) }],
        };
      },
    ),
    rule('screw in end grain', 'a screw along the grain holds less than one across it', ({ g, s }) => {
      const { side } = g.bed.into;
      if (!isWood(side.wood) || !alongGrain(side, [0, 0, 1])) return null;
      const bite = biteOf(g.bed, specOf(s));
      return {
        grade: 'note',
        title: 'The screws go into end grain',
        why: `{mm:${bite}} of thread lies along the fibres, which it cuts short: it holds about three quarters as well at best, and loosens with the seasons. Use it for what is not pulled.`,
        measured: bite,
        limit: 0,
        source: { name: 'Wood Handbook, fastenings: end grain about 75 % of side grain, from memory', basis: 'memory' },
        roles: [g.bed.into.role],
        cures: [],
      };
    }),
  ];
}
