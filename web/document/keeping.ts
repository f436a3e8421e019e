/** Does this browser keep the piece? null: not tried yet. */
import { create } from 'zustand';

export const useKeeping = create<{ kept: boolean | null }>(() => ({ kept: null }));
