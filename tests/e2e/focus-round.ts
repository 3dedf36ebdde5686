/** Once round a screen by Tab: what takes the focus, in which order, and what is wrong with the order or with what shows it. */
import type { CDPSession, JSHandle, Page } from 'playwright-core';
import { dispatchKey } from './dispatch-key.ts';

export interface FocusStop {
  /** The landmark or dialog that it stands in. */
  readonly region: string;
  readonly role: string;
  readonly name: string;
  /** Tells the list or the table that it stands in from others; absent where it stands in none. */
  readonly list?: number;
}

export interface FocusRound {
  readonly stops: readonly FocusStop[];
  readonly faults: readonly string[];
}

/** Keys that are struck before the page is asked whether the round is complete. */
const keysTogether = 12;
/** No screen has so many places to stop at. */
const mostKeys = 600;
/** Milliseconds between two keys by their own clock: a person's, not a scanner's. */
const keyMs = 120;

interface Recorder {
  readonly isAround: boolean;
  round(): FocusRound;
  end(): void;
}

/**
 * Begins wherever the focus is, and leaves it there. The first stop told is the first of them in the document. A screen that
 * was still given something and took the focus meanwhile is gone round once more.
 */
export const focusRound = async (page: Page, session: CDPSession): Promise<FocusRound> => {
  const round = await goRound(page, session);
  return round.faults.some((fault) => fault.startsWith('Tab never comes round'))
    ? goRound(page, session)
    : round;
};

const goRound = async (page: Page, session: CDPSession): Promise<FocusRound> => {
  await page.evaluate(untilItRests);
  const recorder: JSHandle<Recorder> = await page.evaluateHandle(recordStops);
  let at = Date.now();
  for (let keys = 0; keys < mostKeys && !(await recorder.evaluate(({ isAround }) => isAround)); ) {
    const strokes = Array.from({ length: keysTogether }, () => {
      at += keyMs;
      return dispatchKey(session, { key: 'Tab', code: 'Tab', modifiers: 0, windowsVirtualKeyCode: 9 }, at);
    });
    await Promise.all(strokes);
    keys += keysTogether;
  }
  const round = await recorder.evaluate((each) => each.round());
  await recorder.evaluate((each) => each.end());
  await recorder.dispose();
  return round;
};

/** A screen that has just come may still put the focus where it wants it, and still be given what it asked the station for. */
const untilItRests = async (): Promise<void> => {
  const places = 'a[href], button, input, select, textarea, [tabindex]';
  const look = () => ({ focus: document.activeElement, places: document.querySelectorAll(places).length });
  for (let rests = 0, before = look(); rests < 4; ) {
    await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 10)));
    const now = look();
    rests = now.focus === before.focus && now.places === before.places ? rests + 1 : 0;
    before = now;
  }
};

/** Runs in the page. What has the focus is looked at when the next key comes, for by then the page shows it. */
const recordStops = (): Recorder => {
  interface Seen {
    readonly element: Element;
    readonly stop: FocusStop;
  }
  const regions: readonly (readonly [string, string])[] = [
    ['dialog', 'dialog, [role=dialog], [role=alertdialog]'],
    ['banner', 'header'],
    ['navigation', 'nav'],
    ['main', 'main'],
    ['other', 'body'],
  ];
  const roleOfInput: Readonly<Record<string, string>> = {
    checkbox: 'checkbox',
    radio: 'radio',
    range: 'slider',
    number: 'spinbutton',
    search: 'searchbox',
    file: 'file',
    date: 'date',
  };
  const seen: Seen[] = [];
  const faults: string[] = [];
  const begun = document.activeElement;
  let isAround = false;
  let timesOnNothing = 0;
  let looks = 0;

  const tidy = (text: string | null | undefined): string => (text ?? '').replaceAll(/\s+/g, ' ').trim();
  const nameOf = (element: Element): string => {
    const byId = (ids: string | null) =>
      tidy(
        ids
          ?.split(' ')
          .map((id) => document.getElementById(id)?.textContent)
          .join(' '),
      );
    const labels = 'labels' in element ? [...((element.labels ?? []) as NodeListOf<HTMLElement>)] : [];
    const names = [
      byId(element.getAttribute('aria-labelledby')),
      tidy(element.getAttribute('aria-label')),
      tidy(labels.map((label) => label.textContent).join(' ')),
      tidy(element.textContent),
      tidy(element.getAttribute('title')),
    ];
    return names.find((name) => name !== '') ?? '';
  };
  const roleOf = (element: Element): string => {
    const given = element.getAttribute('role');
    if (given !== null) return given;
    if (element instanceof HTMLInputElement) return roleOfInput[element.type] ?? 'textbox';
    const implied: Readonly<Record<string, string>> = { a: 'link', textarea: 'textbox', select: 'combobox' };
    return implied[element.localName] ?? element.localName;
  };
  const regionOf = (element: Element): readonly [string, Element] => {
    for (const [name, selector] of regions) {
      const region = element.closest(selector);
      if (region !== null) return [name, region];
    }
    return ['other', document.body];
  };
  /** What eyes see of it: of a radio button or a check box its tile. */
  const shownAs = (element: Element): Element =>
    element instanceof HTMLInputElement && /radio|checkbox|file/.test(element.type)
      ? (element.closest('label') ?? element)
      : element;
  /** Where it is, no further out than the boxes that scroll it show. */
  const placeOf = (element: Element) => {
    const { left, right, top, bottom } = shownAs(element).getBoundingClientRect();
    const place = { left, right, top, bottom };
    for (let box = element.parentElement; box !== null; box = box.parentElement) {
      if (!/auto|scroll/.test(getComputedStyle(box).overflowY)) continue;
      const within = box.getBoundingClientRect();
      const clamp = (y: number) => Math.min(Math.max(y, within.top), within.bottom);
      place.top = clamp(place.top);
      place.bottom = clamp(place.bottom);
    }
    return place;
  };
  const hasRing = ({ outlineStyle, outlineWidth }: CSSStyleDeclaration): boolean =>
    outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
  /** A ring around it, around what lies over it, or around the box that stands for it. */
  const isIndicated = (element: Element): boolean => {
    const candidates: Element[] = [shownAs(element)];
    for (let box = element.parentElement; box !== null && candidates.length < 5; box = box.parentElement)
      candidates.push(box);
    const overIt = ['::after', '::before'].map((part) => getComputedStyle(element, part));
    return [...overIt, ...candidates.map((each) => getComputedStyle(each))].some(hasRing);
  };
  /** Not wholly hidden by anything ([P] WCAG 2.2, success criterion 2.4.11): some of it can be touched. */
  const isInSight = (element: Element): boolean => {
    const shown = shownAs(element);
    const place = placeOf(element);
    const [left, right] = [Math.max(place.left, 0), Math.min(place.right, window.innerWidth)];
    const [top, bottom] = [Math.max(place.top, 0), Math.min(place.bottom, window.innerHeight)];
    if (right - left < 1 || bottom - top < 1) return false;
    const across = [0.5, 0.1, 0.9].map((share) => left + (right - left) * share);
    const down = [0.5, 0.1, 0.9].map((share) => top + (bottom - top) * share);
    return across.some((x) =>
      down.some((y) => {
        const hit = document.elementFromPoint(x, y);
        return hit !== null && (shown.contains(hit) || hit.contains(shown));
      }),
    );
  };
  /** Downwards, or to the right in the same row, or up to the head of a column further right; never back. */
  const goesOn = (from: Element, to: Element): boolean => {
    const [a, b] = [placeOf(from), placeOf(to)];
    const near = 4;
    const isBelow = b.top >= a.bottom - near;
    const isRight = b.left >= a.right - near;
    const isInside = b.top >= a.top - near && b.left >= a.left - near;
    return isBelow || isRight || isInside;
  };

  const look = (): void => {
    const element = document.activeElement;
    if (isAround) return;
    if (element === null || element === document.body) {
      timesOnNothing += 1;
      if (timesOnNothing > 2 || (timesOnNothing > 1 && seen.length > 0)) isAround = true;
      return;
    }
    const isFirstLook = looks === 0;
    looks += 1;
    if (isFirstLook && element instanceof HTMLElement && element.tabIndex < 0) return;
    const before = seen.at(-1)?.element;
    const known = seen.findIndex((each) => each.element === element);
    const what = `${regionOf(element)[0]} ${roleOf(element)} “${nameOf(element).slice(0, 90)}”`;
    if (!isFirstLook && known <= 0) {
      if (!isInSight(element)) faults.push(`has the focus out of sight: ${what}`);
      if (!isIndicated(element)) faults.push(`does not show that it has the focus: ${what}`);
    }
    if (known >= 0) {
      // Where the focus was when the screen came, Tab itself need not lead, to a radio button that is not chosen, for one; and
      // what has been made anew meanwhile is another element.
      const passed = seen.slice(0, known);
      const isLeft = known === 1 || passed.every((each) => !each.element.isConnected);
      if (isLeft) seen.splice(0, known);
      else if (known > 1) faults.push(`Tab never comes round: it goes back to ${what}`);
      isAround = true;
      return;
    }
    const [region, box] = regionOf(element);
    const [role, name] = [roleOf(element), nameOf(element).slice(0, 90)];
    const list = element.closest('ul, ol, table, [role=grid], [role=table]');
    const lists = [...document.querySelectorAll('ul, ol, table, [role=grid], [role=table]')];
    if (name === '') faults.push(`has no name: ${what} ${element.outerHTML.slice(0, 120)}`);
    const isFirstInDocument =
      before !== undefined && before.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_PRECEDING;
    if (
      before?.isConnected === true &&
      box.contains(before) &&
      !isFirstInDocument &&
      !goesOn(before, element)
    )
      faults.push(`the focus goes back on the screen, from “${nameOf(before).slice(0, 60)}” to ${what}`);
    const stop: FocusStop = { region, role, name, ...(list === null ? {} : { list: lists.indexOf(list) }) };
    seen.push({ element, stop });
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Tab') look();
  };
  window.addEventListener('keydown', onKey, true);

  return {
    get isAround() {
      return isAround;
    },
    round: () => {
      const first = seen.findIndex(({ element }, index) => {
        const before = seen[index - 1]?.element;
        return (
          before !== undefined &&
          (before.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_PRECEDING) !== 0
        );
      });
      const turned = first < 0 ? seen : [...seen.slice(first), ...seen.slice(0, first)];
      const breaks = seen.filter(({ element }, index) => {
        const before = seen[index - 1]?.element;
        return (
          before !== undefined &&
          (before.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_PRECEDING) !== 0
        );
      });
      if (breaks.length > 1) faults.push('the focus goes back in the document more than once in a round');
      if (!isAround) faults.push('Tab never comes round');
      return { stops: turned.map(({ stop }) => stop), faults };
    },
    end: () => {
      window.removeEventListener('keydown', onKey, true);
      if (begun instanceof HTMLElement && begun !== document.body) begun.focus();
      else if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    },
  };
};
