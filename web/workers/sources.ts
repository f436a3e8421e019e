/** Where the workers come from. */
import { type Port } from './watched.ts';
import { mockPort } from '../dev/mock.ts';

export const pieceSource = (): Port => mockPort();
export const boardsSource: (() => Port) | null = null;
