/** The stage as the overlay and the lens need it: the thing itself, how big it is, and a count of frames to redraw on. */
import { create } from 'zustand';
import type { Shot } from './lensShot.ts';
import type { Room, Size } from './camera.ts';
import type { Stage } from './stage.ts';

export type LensSpot = { readonly x: number; readonly y: number; readonly r: number };
export type StageState = {
  readonly stage: Stage | null;
  readonly size: Size;
  readonly room: Room;
  readonly frame: number;
  /** 'lost': the browser took the drawing away; 'none': it can draw nothing in three dimensions. */
  readonly trouble: 'lost' | 'none' | null;
  readonly shot: (Shot & { readonly finding: string }) | null;
};
export const useStage = create<StageState>(() => ({
  stage: null,
  size: { width: 0, height: 0 },
  room: { x: 0, y: 0, width: 1, height: 1 },
  frame: 0,
  trouble: null,
  shot: null,
}));
