/** What axe-core finds on the screen that a window shows, in both themes. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';

const axeSource = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** As the page has it once `loadAxe` has run there. */
declare const axe: { run(context: Document, options: RunOptions): Promise<AxeResults> };

export const loadAxe = (page: Page): Promise<unknown> => page.evaluate(axeSource);

/** Rules of axe whose answer changes with the colours (tag `cat.color`) and that are on unless somebody turns them off. */
const rulesOfColour = ['color-contrast', 'link-in-text-block'];

/** Each with the theme, the element and why: by every rule in the theme of the window, and where it is asked for by those of colour in the other. */
export const axeFaults = (page: Page, inBothThemes: boolean): Promise<readonly string[]> =>
  page.evaluate(
    async ({ colour, both }) => {
      const root = document.documentElement;
      const own = root.getAttribute('data-theme') ?? 'light';
      const found: string[] = [];
      const run = async (theme: string, options: RunOptions): Promise<void> => {
        root.setAttribute('data-theme', theme);
        const { violations } = await axe.run(document, {
          resultTypes: ['violations'],
          preload: false,
          ...options,
        });
        for (const { id, nodes } of violations)
          for (const { html, failureSummary } of nodes)
            found.push(`axe ${id} (${theme}): ${html.slice(0, 160)} ${failureSummary ?? ''}`);
      };
      await run(own, {});
      if (both) await run(own === 'dark' ? 'light' : 'dark', { runOnly: { type: 'rule', values: colour } });
      root.setAttribute('data-theme', own);
      return found;
    },
    { colour: rulesOfColour, both: inBothThemes },
  );
