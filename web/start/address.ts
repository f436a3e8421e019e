/** Pages of the gallery by address: …/#joints is the list of all, …/#joints/housing one of them. Back and forward lead through them. */
import { endExample, openLast } from '../document/piece.ts';
import { useDocument } from '../document/store.ts';
import { look, saw } from '../look/view.ts';

const GALLERY = /^#joints(?:\/([a-z0-9-]{1,60}))?$/;

/** Turns to the page that the address names; false when it names none. */
export function galleryFromAddress(): boolean {
  const named = GALLERY.exec(location.hash);
  if (named) look({ screen: 'gallery', entry: named[1] ?? null, keys: false });
  return named !== null;
}
export function followAddress(): () => void {
  const turn = (): void => {
    if (!galleryFromAddress() && saw().screen === 'gallery') leaveGallery();
  };
  addEventListener('hashchange', turn);
  // The address may have changed between the first look at it and this one.
  galleryFromAddress();
  return () => removeEventListener('hashchange', turn);
}
/** Back to the piece, the one kept from last time included; to the first page where there is none. */
export function leaveGallery(): void {
  endExample();
  look({ screen: 'start', entry: null });
  if (useDocument.getState().json !== null) look({ screen: 'piece' });
  else void openLast();
}
/** The address no longer names a page that is not shown; going back leads there again. */
export function clearAddress(): void {
  if (saw().screen !== 'gallery' && GALLERY.test(location.hash)) history.pushState(null, '', location.pathname + location.search);
}
