/**
 * A vector drawing of a small piece: plain records of what is seen from one side and above, no file format. The eye is far away, so
 * that lines that run alike in the piece run alike on the paper. Hidden lines are left out; faces are filled from the back forwards.
 */
import type { Vec2 } from '../geom/vec3.ts';
import { fillsOf } from './fills.ts';
import { linesOf } from './lines.ts';
import type { Disc, Drawing, DrawnPiece } from './record.ts';
import { chained, clearPlaces, sheetOf } from './sheet.ts';
import { type Eye, sceneOf } from './space.ts';
import { blockersOf } from './visible.ts';

/** Draws the piece as large as `room` lets it (units of the paper, wide and high). The same piece always gives the same numbers. */
export function drawing(piece: DrawnPiece, eye: Eye, room: Vec2): Drawing {
  const scene = sceneOf(piece, eye);
  const sheet = sheetOf(scene, room);
  const blockers = blockersOf(scene);
  const lines = chained(linesOf(scene, sheet.scale, blockers), sheet);
  const places = clearPlaces(scene, sheet, lines, blockers);
  // Where all parts are of one kind a letter tells nothing.
  const several = new Set(piece.parts.map((p) => p.letter).filter((l) => l !== '')).size > 1;
  const discs = piece.parts.flatMap((p, i): Disc[] => {
    const at = places[i];
    return several && p.letter !== '' && at ? [{ letter: p.letter, label: p.label, at }] : [];
  });
  return { width: sheet.width, height: sheet.height, fills: fillsOf(scene, sheet, blockers), lines, discs };
}
