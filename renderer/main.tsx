/** The window: puts theme and language in place, then shows the station. */
import '@fontsource/atkinson-hyperlegible/latin-400.css';
import '@fontsource/atkinson-hyperlegible/latin-700.css';
import '@fontsource/atkinson-hyperlegible/latin-ext-400.css';
import '@fontsource/atkinson-hyperlegible/latin-ext-700.css';
import './design/tokens.css';
import './design/base.css';
// Before anything else of the page is read, the station is asked.
import './station/first-status.ts';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App, knowStatus } from './app.tsx';
import { firstTheme, showTheme } from './design/theme.ts';
import { currentLanguage } from './i18n/catalogue.ts';
import { keepDropsOut } from './navigation/drops.ts';
import { firstStatus } from './station/first-status.ts';
import { tellPresence } from './station/presence.ts';
import { tellLanguage } from './station/shell-bridge.ts';

showTheme(firstTheme());
tellPresence();
keepDropsOut();
document.documentElement.lang = currentLanguage();
tellLanguage(currentLanguage());

/** A station that takes longer says so in the window. */
const patienceMs = 400;
const first = await Promise.race([
  firstStatus,
  new Promise<undefined>((resolve) => setTimeout(() => resolve(undefined), patienceMs)),
]);
if (first?.ok) knowStatus(first.output);

const root = document.getElementById('root');
if (root !== null) {
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
}
