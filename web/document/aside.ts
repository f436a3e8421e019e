/** The maker's own piece while an example lies on the sheet: all of it, so that it comes back as it was left. */
import { create } from 'zustand';
import type { View } from '../look/view.ts';
import type { Results } from '../results/store.ts';
import type { Cured } from './cured.ts';
import type { DocumentStore } from './store.ts';

type Own = { readonly document: DocumentStore; readonly results: Results; readonly view: View; readonly cured: readonly Cured[] };
export const useAside = create<{ readonly own: Own | null }>(() => ({ own: null }));
