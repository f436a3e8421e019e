import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { openLast } from './document/piece.ts';
import { galleryFromAddress } from './start/address.ts';
import { openFromAddress } from './start/starters.ts';
import './look/fonts.css';
import './look/tokens.css';
import './look/base.css';
import './look/places.css';
import './said/said.css';
import './viewer/sheet.css';
import './stick/stick.css';
import './bench/bench.css';
import './start/start.css';
import './look/narrow.css';

const place = document.getElementById('app');
if (!place) throw new Error('the page has no place for the app');
const gallery = galleryFromAddress();
createRoot(place).render(<App />);
// What was on the sheet last time waits while a page of the gallery was asked for.
if (!gallery) void openFromAddress().then((opened) => (opened ? undefined : openLast()));
