/**
 * One page of the gallery: a joint family, a shape or a maker as whoever has never met it would want it told. Plain records; figures in
 * texts stand as {mm:12}, so that each reader prints them in units of its own.
 */
import type { Json, Source } from '../model/finding.ts';
import type { Drawing } from './record.ts';

export type PageSort = 'joint' | 'shape' | 'maker';
/** A size that may be set, and why it is as it is where nothing is set. */
export type PageSize = {
  readonly id: string;
  readonly words: string;
  /** Null where nothing is proposed: the maker says it. */
  readonly value: string | null;
  readonly rule?: string;
  readonly source?: Source;
  /** Where sources differ: from, to. */
  readonly range?: readonly [string, string];
  /** All that may be chosen, with what each means. */
  readonly options?: readonly string[];
};
/** A task at the bench, on the part in this role. */
export type PageTask = { readonly role: string; readonly words: string; readonly tool: string; readonly caution?: string };
/** Surfaces that meet in the same way. */
export type PageFit = { readonly how: string; readonly where: readonly string[] };
export type PagePart = { readonly letter: string; readonly label: string; readonly wood: string; readonly size: string };
export type PageExample = {
  readonly name: string;
  readonly words: string;
  readonly units: 'mm' | 'in';
  readonly document: Json;
  readonly parts: readonly PagePart[];
  readonly together: Drawing;
  /** The same where nothing comes apart. */
  readonly apart: Drawing;
  /** How it goes together, in order. */
  readonly steps: readonly string[];
  /** What the example sets itself, beyond what is proposed. */
  readonly given: readonly PageSize[];
  readonly sizes: readonly PageSize[];
  readonly fits: readonly PageFit[];
  readonly hand: readonly PageTask[];
  readonly machine: readonly PageTask[];
};
export type Page = {
  /** Part of an address: 'housing', 'shape-taper', 'maker-drawer'. */
  readonly id: string;
  readonly sort: PageSort;
  readonly title: string;
  readonly words: string;
  readonly roles: readonly { readonly words: string; readonly many: boolean }[];
  /** What is looked at whenever it is used. */
  readonly rules: readonly string[];
  readonly examples: readonly PageExample[];
};
/** As it stands in the list of all pages; `find`: what else it may be looked for by. */
export type Listed = Pick<Page, 'id' | 'sort' | 'title' | 'words'> & { readonly find: string };
/** A page without its drawings, which stand beside it as files. */
export type PageText = Omit<Page, 'examples'> & { readonly examples: readonly Omit<PageExample, 'together' | 'apart'>[] };

export const SORTS: Readonly<Record<PageSort, { readonly many: string; readonly words: string }>> = {
  joint: { many: 'Joints', words: 'Ways in which two parts hold each other.' },
  shape: { many: 'Shapes', words: 'Wood taken from one part for its own sake.' },
  maker: { many: 'Made into a space', words: 'Whole assemblies, written into a space that you name.' },
};
/** What a page is known by, from the id in a document: 'mortise_tenon' is at 'mortise-tenon', the shape 'taper' at 'shape-taper'. */
export const pageName = (sort: PageSort, id: string): string => `${sort === 'joint' ? '' : `${sort}-`}${id.replaceAll('_', '-')}`;
/** The file of a drawing, beside its page. */
export const drawingName = (page: string, example: number, apart: boolean): string => `${page}-${example + 1}${apart ? '-apart' : ''}.svg`;
/** A size that is nothing here is named and no more. */
export const isShown = (s: PageSize): boolean => s.value !== null && !/^\{\w+:0\}$/.test(s.value);
/** The drawing in the list of all pages: its first example, apart, without letters. */
export const cardName = (page: string): string => `${page}.svg`;
