/** Publications that the rules of mortises, tenons, pegs and wedges rest on; named beside each rule. */
import type { Source } from '../model/finding.ts';

export const PTSW = 'Port Townsend School of Woodworking, rules of thumb';
export const RIV = 'Notes on Building Construction (Rivington), mortise and tenon';
export const NOYES = 'Noyes, Handwork in Wood, 1910';
export const TIMBER_PEGS = 'practitioners on draw-boring (timber and furniture pages)';

export const read = (name: string): Source => ({ name, basis: 'read' });
