/** What a joint family says of one place, in words for its page: sizes and why, how tight it is and where, work at the bench. */
import type { JointPlace } from '../build/part.ts';
import { DEFAULT_CUTTING } from '../joints/cutters.ts';
import { type Contact, type Family, type Field, type Reason, isRefusal } from '../joints/family.ts';
import { GIVEN } from '../joints/reasons.ts';
import type { PageFit, PageSize, PageTask } from '../papers/page.ts';
import { degFigure, mmFigure, numberFigure } from '../units/figures.ts';

/** Sizes as proposed for the kind of joint that the example chooses, and those that the example sets otherwise. */
export function sizesOf(f: Family, place: JointPlace, units: 'mm' | 'in'): { readonly sizes: PageSize[]; readonly given: PageSize[] } {
  const now = place.sizes ?? {};
  const { sizes, because } = proposedFor(f, place, units) ?? { sizes: now, because: place.because ?? {} };
  const rows = Object.entries(f.params).map(([id, field]) => sizeRow(id, field, sizes[id], because[id]));
  const given = Object.entries(f.params).flatMap(([id, field]): PageSize[] => {
    const value = figureOf(field, now[id]);
    return field.kind === 'choice' || value === null || value === figureOf(field, sizes[id]) ? [] : [{ id, words: field.words, value }];
  });
  return { sizes: rows.filter((r) => r.value !== null), given };
}
/** Lengths and angles left open, choices and counts as the example has them; null where the family then refuses. */
function proposedFor(f: Family, place: JointPlace, units: 'mm' | 'in') {
  const set = Object.fromEntries(Object.entries(place.input.set).filter(([id]) => ['choice', 'count'].includes(f.params[id]?.kind ?? '')));
  const p = f.propose({ ...place.input, set }, DEFAULT_CUTTING[units]);
  return isRefusal<Record<string, unknown>>(p) ? null : (p as { sizes: Record<string, unknown>; because: Record<string, Reason> });
}
function sizeRow(id: string, field: Field, value: unknown, why: Reason | undefined): PageSize {
  const [low, high] = why?.range ?? [];
  const ends = [figureOf(field, low), figureOf(field, high)] as const;
  return {
    id,
    words: field.words,
    value: figureOf(field, value),
    ...(why && why !== GIVEN ? { rule: why.rule, source: why.source } : {}),
    ...(ends[0] !== null && ends[1] !== null ? { range: [ends[0], ends[1]] as const } : {}),
    ...(field.options ? { options: Object.values(field.options) } : {}),
  };
}
/** A value as it stands in a text; null for what is not there at all. */
function figureOf(field: { readonly kind: string; readonly options?: Readonly<Record<string, string>> }, value: unknown): string | null {
  if (typeof value === 'string') return field.options?.[value] ?? value;
  if (typeof value !== 'number' || !Number.isFinite(value)) return null;
  if (field.kind === 'length' || field.kind === 'place') return mmFigure(value);
  if (field.kind === 'angle') return degFigure(value);
  // A slope is set out as so many along for one across; a share, which is never so small, stays a number.
  return field.kind === 'ratio' && value > 0 && value < 0.3 ? `${numberFigure(1)} in ${numberFigure(1 / value)}` : numberFigure(value);
}

const FITS: Readonly<Record<Contact['fit'], string>> = {
  press: 'pressed home',
  tap: 'tapped home',
  slip: 'slides in by hand',
  loose: 'loose',
  gap: 'stands clear',
};
const HOLDS: Readonly<Record<Contact['hold'], string>> = { glued: 'glued', dry: 'no glue', pinned: 'pinned', sliding: 'free to slide' };
const GRAIN: Readonly<Record<Contact['glue'], string>> = {
  long: 'long grain to long grain, which glues well',
  end: 'end grain, which hardly glues',
  never: 'never glue this',
};
/** Surfaces gathered by how they meet, the glued ones first. */
export function fitsOf(place: JointPlace): PageFit[] {
  const groups = new Map<string, string[]>();
  const contacts = place.made?.contacts ?? [];
  for (const c of [...contacts].sort((a, b) => Number(b.hold === 'glued') - Number(a.hold === 'glued'))) {
    const how = [FITS[c.fit], HOLDS[c.hold], ...(c.hold === 'glued' || c.glue === 'never' ? [GRAIN[c.glue]] : [])].join(', ');
    groups.set(how, [...(groups.get(how) ?? []), c.name]);
  }
  return [...groups].map(([how, where]) => ({ how: wordsOf(how), where }));
}
export function tasksOf(f: Family, place: JointPlace, hand: boolean): PageTask[] {
  if (!place.sizes || !place.made) return [];
  return f.bench(place.input, place.sizes, place.made, hand).map((o) => ({
    role: f.roles[o.role]?.words ?? o.role,
    words: o.words,
    tool: o.tool,
    ...(o.caution === undefined ? {} : { caution: o.caution }),
  }));
}
/** As a sentence begins. */
export const wordsOf = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
