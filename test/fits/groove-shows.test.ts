/** A groove at a dovetailed corner: hidden under a tail, or not. */
import { beforeAll } from 'vitest';
import { loadKernel } from '../../src/solids/kernel.ts';
import { fixtureText } from '../support/piece.ts';
import { tryRule } from '../support/checks.ts';

beforeAll(() => loadKernel());

type Tray = { parts: Record<string, object>; joints: Record<string, { set: object }> };
/** The tray with the bottom at this height, its tails laid out without regard to the groove or over it. */
const tray = (up: string, set: object, grooves: object = {}): object => {
  const doc = JSON.parse(fixtureText('dovetailed-tray')) as Tray;
  // One corner only, so that it speaks once.
  doc.parts['bottom'] = { ...doc.parts['bottom'], bottom: up };
  doc.joints['corners'] = { ...doc.joints['corners'], places: [{ tails: 'side:left', pins: 'end:front' }], set } as never;
  doc.joints['rest'] = {
    as: 'dovetail@1',
    places: [
      { tails: 'side:left', pins: 'end:back' },
      { tails: 'side:right', pins: 'end:*' },
    ],
    set: { tails: '2', tail_over: 'bottom.midheight', over_size: '6' },
  } as never;
  doc.joints['grooves'] = { ...doc.joints['grooves'], set: { ...doc.joints['grooves']?.set, ...grooves } } as never;
  return doc;
};
// Two tails on 80: the pin between them stands about 40 up, where this groove runs.
tryRule('groove-shows', {
  quiet: {
    'a tail laid over it': tray('37', { tails: '2', tail_over: 'bottom.midheight', over_size: '6' }),
    'no bottom near the pin': tray('20', { tails: '2', tail_over: 'bottom.midheight', over_size: '6' }),
    'stopped grooves': tray('37', { tails: '2' }, { stopped: 'both', stop: '14', corners: 'none' }),
  },
  speaks: {
    'between two tails': {
      in: tray('37', { tails: '2' }),
      parts: ['bottom', 'end:front', 'side:left'],
      measured: 6,
      cure: 'Lay a tail over the groove',
    },
  },
});
