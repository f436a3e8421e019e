/** Settings of shapes and makers as rows of a page: what the example types, and what else may be set. */
import type { Maker } from '../makers/kit/maker.ts';
import { kindAndVersion } from '../model/catalog.ts';
import type { Document } from '../model/document.ts';
import type { PageSize } from '../papers/page.ts';
import type { ShapeKind } from '../shapes/shape.ts';
import { mmFigure, numberFigure } from '../units/figures.ts';
import { readLength } from '../units/parse.ts';

/** Of the first part that is shaped so: as its document says it. */
export function shapeSizes(kind: ShapeKind, doc: Document): PageSize[] {
  const all = Object.values(doc.parts ?? {}).flatMap((p) => (p.shape ?? []) as readonly Readonly<Record<string, unknown>>[]);
  const set = all.find((s) => typeof s['as'] === 'string' && kindAndVersion(s['as']).id === kind.id);
  return Object.entries(kind.params).map(([id, field]): PageSize => {
    const options = 'options' in field && field.options ? field.options : undefined;
    return {
      id,
      words: field.words,
      value: set && set[id] !== undefined ? typed(set[id], doc.units, field.kind, options) : null,
      ...(options ? { options: Object.values(options) } : {}),
    };
  });
}
/** A length that is nothing but a length is printed in the reader's units; all else stays as it was typed. */
function typed(value: unknown, units: 'mm' | 'in', kind: string, options?: Readonly<Record<string, string>>): string {
  if (Array.isArray(value)) return value.every((v) => typeof v === 'string') ? value.join(', ') : `${value.length} points`;
  const text = String(value);
  if (options && Object.hasOwn(options, text)) return options[text] ?? text;
  if (kind !== 'length' && kind !== 'place') return text;
  const read = readLength(text, units);
  return read.ok ? mmFigure(read.mm) : text;
}
/** All settings of a maker: what the example gives, else what stands in the form at first. */
export function settingsOf(m: Maker, given: Readonly<Record<string, string>>, units: 'mm' | 'in'): PageSize[] {
  return Object.entries(m.settings).map(([id, s]): PageSize => {
    const initial = typeof s.initial === 'string' ? s.initial : s.initial[units];
    const value = Object.hasOwn(given, id) ? (given[id] ?? '') : initial;
    const figure = s.kind === 'length' ? mmFigure : numberFigure;
    return {
      id,
      words: s.words,
      value: value === '' ? null : s.kind === 'wood' ? value.replaceAll('_', ' ') : typed(value, units, s.kind, s.options),
      ...(s.least !== undefined && s.most !== undefined ? { range: [figure(s.least), figure(s.most)] as const } : {}),
      ...(s.options ? { options: Object.values(s.options) } : {}),
    };
  });
}
