/** Where the workers come from. */
import type { Port } from './watched.ts';

export const pieceSource = (): Port => new Worker(new URL('./piece.worker.ts', import.meta.url), { type: 'module', name: 'piece' });
export const boardsSource = (): Port => new Worker(new URL('./boards.worker.ts', import.meta.url), { type: 'module', name: 'boards' });
