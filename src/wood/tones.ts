/** Colours for the view: one light and one dark tone of the growth ring, sRGB, chosen by eye for this project. Not measurements. */
import type { GrainKind } from './figures.ts';
import { woodOf } from './woods.ts';

export type Tone = {
  /** Early wood, or the ground of a stuff without rings. */
  readonly light: string;
  /** Late wood: the line of the ring. */
  readonly dark: string;
  readonly grain: GrainKind | 'none';
};
type Pair = readonly [light: string, dark: string];

const WOODS: Readonly<Record<string, Pair>> = {
  black_cherry: ['#c08c6b', '#9f6548'],
  european_cherry: ['#c99a74', '#a97450'],
  white_ash: ['#dcc7a3', '#b3966c'],
  european_ash: ['#ddc9a8', '#b39a74'],
  black_walnut: ['#7d5d47', '#573c2c'],
  european_walnut: ['#8e715a', '#634a38'],
  butternut: ['#b08d6a', '#896748'],
  white_oak: ['#c8a97d', '#9d7d53'],
  european_oak: ['#c2a073', '#96754a'],
  northern_red_oak: ['#cba585', '#a27a5a'],
  sugar_maple: ['#e3cfb1', '#c4a985'],
  red_maple: ['#dfc7a7', '#bf9f7b'],
  silver_maple: ['#dfc9ab', '#bfa27f'],
  sycamore_eu: ['#e8d9c0', '#cdb897'],
  sycamore_us: ['#d6b595', '#b48d6b'],
  american_beech: ['#d5af8b', '#b58762'],
  european_beech: ['#d8b491', '#b98d68'],
  hornbeam: ['#e0d0b6', '#c0a988'],
  american_elm: ['#b9926a', '#8d6744'],
  european_elm: ['#b58d68', '#876241'],
  pear: ['#d0a083', '#b27e60'],
  apple: ['#c48e6d', '#9d6747'],
  yellow_birch: ['#dfc39c', '#bd9a6f'],
  european_birch: ['#e2c9a4', '#c2a179'],
  yellow_poplar: ['#d3ca9b', '#aca36f'],
  quaking_aspen: ['#e6dac4', '#cbb999'],
  basswood: ['#e2d0af', '#c6ae88'],
  lime: ['#e4d3b2', '#c8b08a'],
  red_alder: ['#cd9f78', '#ab7950'],
  american_chestnut: ['#bf9b70', '#93704a'],
  sweet_chestnut: ['#c5a377', '#9a784f'],
  shagbark_hickory: ['#cfae85', '#a7825a'],
  pecan_hickory: ['#cda983', '#a67d58'],
  sweetgum: ['#b98a69', '#946447'],
  american_holly: ['#ebe6d6', '#d3cbb3'],
  persimmon: ['#d9cdb4', '#a99a7c'],
  black_locust: ['#b9a05e', '#8d763c'],
  honeylocust: ['#c79a70', '#9c6f49'],
  hackberry: ['#d8c69d', '#b09c70'],
  sassafras: ['#bfa078', '#947650'],
  eastern_white_pine: ['#e6cfa1', '#c99f68'],
  scots_pine: ['#e2c391', '#bd8c52'],
  red_pine: ['#e0bd8b', '#b98650'],
  ponderosa_pine: ['#e6cc9c', '#c59a63'],
  loblolly_pine: ['#e0bc80', '#b27d40'],
  longleaf_pine: ['#d8ab6c', '#a66d34'],
  douglas_fir_coast: ['#d6a576', '#a96e42'],
  norway_spruce: ['#eadbb9', '#c9ac7b'],
  sitka_spruce: ['#e6d1ac', '#c4a175'],
  western_redcedar: ['#b98461', '#8c573a'],
  eastern_redcedar: ['#b5705f', '#8a473b'],
  redwood_old: ['#a9654b', '#7e412d'],
  redwood_young: ['#b37558', '#884e37'],
  european_larch: ['#cf9f6b', '#9f6d3e'],
  baldcypress: ['#d2ad78', '#a67e4b'],
  yew: ['#c58858', '#995d33'],
  mahogany: ['#9c5c41', '#773e29'],
  sapele: ['#8f4f38', '#6a3524'],
  teak: ['#ad8250', '#825a31'],
  iroko: ['#a67b48', '#7a562c'],
};
const OTHERS: Readonly<Record<string, Pair>> = {
  sheet: ['#d9c49f', '#c3aa80'],
  glass: ['#c9d8d6', '#b4c6c4'],
  stone: ['#b3b2ad', '#97968f'],
  metal: ['#9a9c9b', '#7e807f'],
  upholstery: ['#8b8379', '#6f685f'],
};
const FALLBACK = { hardwood: ['#c7a27c', '#9f7852'], softwood: ['#e0c294', '#bb8f5c'] } as const satisfies Record<string, Pair>;
const SPECIAL: Readonly<Record<string, Pair>> = {
  mdf: ['#b79d7c', '#b2987a'],
  hardboard: ['#84634a', '#7e5e46'],
  brass: ['#bfa15a', '#a3873f'],
  leather: ['#7a5137', '#65402a'],
  mirror: ['#d3dedf', '#bccacb'],
  slate: ['#5d6468', '#4d5458'],
};

/** The tones of a wood or another stuff; an unknown timber gets those of its group. */
export function toneOf(name: string): Tone {
  const w = woodOf(name);
  const grain = w.kind === 'species' ? w.species.grain : w.kind === 'own' ? 'diffuse-porous' : 'none';
  const [light, dark] =
    w.kind === 'other'
      ? (SPECIAL[w.id] ?? OTHERS[w.of] ?? FALLBACK.hardwood)
      : (WOODS[w.id] ?? FALLBACK[w.kind === 'species' ? w.species.group : 'hardwood']);
  return { light, dark, grain };
}
