/**
 * The contract that every maker fills: a named space and settings in, patches out. What it writes are ordinary parts, groups, spaces
 * and joints whose expressions read the faces of the space; afterwards nothing remembers the maker.
 */
import type { Box } from '../../geom/box.ts';
import type { Json, Patch } from '../../model/finding.ts';

/**
 * One setting, as a form shows it. All are given as text: a length as typed ("3/4 in") or the name of a size of the document; `lengths`
 * such texts with commas between, one of them maybe '*' for the rest; `percent` a moisture content ("8") or the air that gives it
 * ("65 % RH"); `part` the path of a part, or nothing: then the one that stands there is
 * found.
 */
export type Setting = {
  readonly kind: 'id' | 'length' | 'lengths' | 'number' | 'percent' | 'count' | 'choice' | 'wood' | 'part';
  /** In the maker's words: 'thickness of the sides'. */
  readonly words: string;
  readonly initial: string | { readonly mm: string; readonly in: string };
  /** For choices, the values and what each means. */
  readonly options?: Readonly<Record<string, string>>;
  /** Bounds: mm for lengths, else the number itself. */
  readonly least?: number;
  readonly most?: number;
};
export type Settings = Readonly<Record<string, Setting>>;

/** The space that is to be filled, as its document has it. */
export type Opening = {
  /** How it is read from within its own group: 'niche', 'niche:*' in a group that is copied, 'niche:left' for one copy of several. */
  readonly path: string;
  readonly units: 'mm' | 'in';
  /** Its size now, mm. */
  readonly width: number;
  readonly depth: number;
  readonly height: number;
  /** Values of the document's sizes, mm, which settings may name. */
  readonly sizes: Readonly<Record<string, number>>;
  /** The group that it lives in, and over how many names that group is copied. */
  readonly group: string | null;
  readonly stars: number;
  /** Parts that stand square to it, by the path under which it would read them: their boxes as seen from the low corner of the space, mm. */
  readonly parts: Readonly<Record<string, Box>>;
  /** Ids that are taken. */
  readonly taken: ReadonlySet<string>;
};

/** Why nothing is written: the setting ('': the space itself is at fault), the limit in mm (or a plain number), and a text for the setting that works, where there is one. */
export type Trouble = {
  readonly setting: string;
  readonly cannot: string;
  readonly limit: number;
  readonly asked: number;
  readonly nearest?: string;
};
export type Filled =
  { readonly ok: true; readonly patches: readonly Patch[] } | { readonly ok: false; readonly troubles: readonly Trouble[] };

/** A document with an empty space, and settings that differ from the initial ones. */
export type MakerExample = {
  readonly name: string;
  readonly words: string;
  readonly document: Json;
  readonly space: string;
  readonly settings: Readonly<Record<string, string>>;
  /** What makes the space larger along at least one axis: the filling must follow. */
  readonly bigger: readonly Patch[];
};
export type Maker = {
  readonly id: string;
  readonly title: string;
  /** One sentence: what it writes. */
  readonly words: string;
  readonly settings: Settings;
  /** Settings left out are the initial ones. Pure; never throws for what a person typed. */
  readonly fill: (space: Opening, given: Readonly<Record<string, string>>) => Filled;
  readonly examples: readonly MakerExample[];
};
