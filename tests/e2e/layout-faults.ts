/** What is clipped, spilled or scrolls where it must not on the screen that a window shows. */
import type { Page } from 'playwright-core';

/** Elements whose words are wider than the box that shows them, and boxes that scroll where they must not. */
export const layoutFaults = (page: Page, fitsTheWindow: boolean): Promise<readonly string[]> =>
  page.evaluate((mustFit) => {
    const found: string[] = [];
    const nameOf = (element: Element) =>
      `<${element.localName} class="${element.getAttribute('class') ?? ''}"> “${(element.textContent ?? '').trim().slice(0, 60)}”`;
    const root = document.documentElement;
    if (root.scrollWidth > root.clientWidth) found.push('the window scrolls sideways');
    for (const element of document.querySelectorAll<HTMLElement>('body *')) {
      const isForEyes = element.clientWidth > 1 && element.clientHeight > 1;
      const hasText = [...element.childNodes].some(
        (node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim() !== '',
      );
      const style = getComputedStyle(element);
      if (!isForEyes || element.closest('svg') !== null || style.visibility === 'hidden') continue;
      const isTooWide = element.scrollWidth > element.clientWidth + 1;
      if (isTooWide && hasText) found.push(`clipped or spilled: ${nameOf(element)}`);
      else if (isTooWide && /auto|scroll/.test(style.overflowX))
        found.push(`scrolls sideways: ${nameOf(element)}`);
      const isTooHigh = element.scrollHeight > element.clientHeight + 1;
      if (mustFit && isTooHigh && style.overflowY !== 'visible')
        found.push(`does not fit: ${nameOf(element)}`);
    }
    return found;
  }, fitsTheWindow);
