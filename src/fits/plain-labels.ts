/**
 * What a cure may do to a document without saying so in its label: set or clear a setting of a joint, change a named size, append
 * "+ d" or "- d" to an expression. Everything else needs a label from this list.
 */
import type { Document } from '../model/document.ts';
import type { Patch, Remedy } from '../model/finding.ts';

/** Labels that say in plain words that they do more. */
export const PLAIN_LABELS = {
  loose: 'Say that it lies loose',
  turnMark: 'Put its mark on the opposite face',
  markWay: 'Mark which way it goes',
} as const;
const plain: readonly string[] = Object.values(PLAIN_LABELS);

/** Whether every patch of a remedy is of a kind that it may be, or its label says that it does more. */
export const isAllowed = (doc: Document, r: Remedy): boolean => plain.includes(r.label) || r.patches.every((p) => isQuiet(doc, p));

function isQuiet(doc: Document, p: Patch): boolean {
  const [kind, id, key, setting, ...more] = p.path.split('/');
  if (id === undefined || more.length) return false;
  if (kind === 'joints') return key === 'set' && setting !== undefined;
  if (kind === 'sizes') return key === undefined && p.op === 'replace';
  if ((kind !== 'parts' && kind !== 'spaces') || key === undefined || setting !== undefined || p.op !== 'replace') return false;
  const old = (doc[kind]?.[id] as Record<string, unknown> | undefined)?.[key];
  return (
    typeof p.value === 'string' &&
    (typeof old === 'string' || typeof old === 'number') &&
    new RegExp(`^${escaped(String(old))} [+-] [^()]+$`).test(p.value)
  );
}
const escaped = (s: string): string => s.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
