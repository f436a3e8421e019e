import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { openLast } from './document/piece.ts';
import './look/fonts.css';
import './look/tokens.css';
import './look/app.css';

const place = document.getElementById('app');
if (!place) throw new Error('the page has no place for the app');
createRoot(place).render(<App />);
void openLast();
