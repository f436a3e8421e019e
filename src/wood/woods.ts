/** From the word a maker writes to a timber, to stuff that is not wood, or to a timber of the maker's own. */
import { nearestOf } from '../units/words.ts';
import type { Species } from './figures.ts';
import { SPECIES } from './species.ts';

/** What makers call a timber when they need not say more; value: id of the species. */
const ALIASES: Readonly<Record<string, string>> = {
  cherry: 'black_cherry',
  walnut: 'black_walnut',
  american_walnut: 'black_walnut',
  american_cherry: 'black_cherry',
  english_walnut: 'european_walnut',
  wild_cherry: 'european_cherry',
  ash: 'white_ash',
  english_ash: 'european_ash',
  oak: 'white_oak',
  english_oak: 'european_oak',
  red_oak: 'northern_red_oak',
  maple: 'sugar_maple',
  hard_maple: 'sugar_maple',
  rock_maple: 'sugar_maple',
  soft_maple: 'red_maple',
  european_maple: 'sycamore_eu',
  european_sycamore: 'sycamore_eu',
  sycamore: 'sycamore_us',
  birch: 'yellow_birch',
  beech: 'european_beech',
  elm: 'american_elm',
  english_elm: 'european_elm',
  alder: 'red_alder',
  poplar: 'yellow_poplar',
  tulipwood: 'yellow_poplar',
  tulip_poplar: 'yellow_poplar',
  aspen: 'quaking_aspen',
  hickory: 'shagbark_hickory',
  pecan: 'pecan_hickory',
  linden: 'lime',
  limewood: 'lime',
  pine: 'eastern_white_pine',
  white_pine: 'eastern_white_pine',
  yellow_pine: 'loblolly_pine',
  southern_yellow_pine: 'loblolly_pine',
  european_redwood: 'scots_pine',
  redwood: 'redwood_old',
  douglas_fir: 'douglas_fir_coast',
  fir: 'douglas_fir_coast',
  cedar: 'western_redcedar',
  red_cedar: 'western_redcedar',
  larch: 'european_larch',
  spruce: 'norway_spruce',
  cypress: 'baldcypress',
  chestnut: 'sweet_chestnut',
  holly: 'american_holly',
  locust: 'black_locust',
  pearwood: 'pear',
  honduran_mahogany: 'mahogany',
};

/** Stuff without rings: how it is bought decides what is done with it. */
export type OtherKind = 'sheet' | 'glass' | 'stone' | 'metal' | 'upholstery';
const OTHERS: Readonly<Record<string, OtherKind>> = {
  plywood: 'sheet',
  ply: 'sheet',
  birch_plywood: 'sheet',
  mdf: 'sheet',
  hardboard: 'sheet',
  particleboard: 'sheet',
  chipboard: 'sheet',
  glass: 'glass',
  mirror: 'glass',
  stone: 'stone',
  marble: 'stone',
  slate: 'stone',
  granite: 'stone',
  tile: 'stone',
  metal: 'metal',
  steel: 'metal',
  brass: 'metal',
  iron: 'metal',
  copper: 'metal',
  bronze: 'metal',
  aluminium: 'metal',
  aluminum: 'metal',
  upholstery: 'upholstery',
  leather: 'upholstery',
  fabric: 'upholstery',
  foam: 'upholstery',
  cane: 'upholstery',
  rush: 'upholstery',
  webbing: 'upholstery',
};

export type Wood =
  | { readonly kind: 'species'; readonly id: string; readonly species: Species }
  | { readonly kind: 'other'; readonly id: string; readonly of: OtherKind }
  /** A timber of the maker's own: allowed, without figures. */
  | { readonly kind: 'own'; readonly id: string };

const BY_ID: ReadonlyMap<string, Species> = new Map(SPECIES.map((s) => [s.id, s]));
/** Names of species as they are printed, turned into ids: 'Douglas-fir (coast)' is 'douglas_fir_coast'. */
const BY_NAME: ReadonlyMap<string, Species> = new Map(SPECIES.map((s) => [idOf(s.name), s]));

/** 'White Oak', 'white-oak' and 'white_oak' are one id. */
function idOf(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replace(/[^a-z0-9\u00c0-\uffff]+/gu, '_')
    .replace(/^_+|_+$/g, '');
}
/** Every name that is known without more: species, their short names, stuff that is not wood. */
export const woodNames = (): readonly string[] => [...BY_ID.keys(), ...Object.keys(ALIASES), ...Object.keys(OTHERS)];

/** What a written wood means. Never fails: an unknown name is a timber of the maker's own. */
export function woodOf(name: string): Wood {
  const id = idOf(name);
  const other = Object.hasOwn(OTHERS, id) ? OTHERS[id] : undefined;
  if (other) return { kind: 'other', id, of: other };
  const species = BY_ID.get(Object.hasOwn(ALIASES, id) ? (ALIASES[id] ?? id) : id) ?? BY_NAME.get(id);
  if (species) return { kind: 'species', id: species.id, species };
  return { kind: 'own', id: id === '' ? 'wood' : id };
}
/** The known name that an unknown one may have been meant for; null for a known one, and where none is near. */
export function nearestWood(name: string): string | null {
  const w = woodOf(name);
  return w.kind === 'own' ? nearestOf(w.id, woodNames()) : null;
}
/** Do two written names mean the same stuff ('cherry', 'Black Cherry')? */
export const sameWood = (a: string, b: string): boolean => woodOf(a).id === woodOf(b).id;
/** Has it rings, so that grain, movement and boards make sense? */
export const isWood = (name: string): boolean => woodOf(name).kind !== 'other';
/** Sheets whose two directions look alike; plywood has a face grain, and a sheet of a name not listed is taken to have one. */
const GRAINLESS: ReadonlySet<string> = new Set(['mdf', 'hardboard', 'particleboard', 'chipboard']);
export const hasFaceGrain = (name: string): boolean => !GRAINLESS.has(woodOf(name).id);
/** Softwood is tallied and sized by other rules than hardwood; an unknown timber counts as hardwood. */
export function isSoftwood(name: string): boolean {
  const w = woodOf(name);
  return w.kind === 'species' && w.species.group === 'softwood';
}
/** The name as a person says it: 'white_oak' is 'white oak'. The maker's own word stays. */
export const woodWords = (name: string): string => name.trim().replaceAll('_', ' ');
