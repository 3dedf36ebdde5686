/** What is dragged over the window and dropped there. */

/**
 * A browser opens a link, a picture or a file that is dropped on a page in the place of the page. Here it leads nowhere, but for
 * what a part of the window takes for itself and for text in a field.
 */
export const keepDropsOut = (): void => {
  for (const kind of ['dragover', 'drop'] as const)
    window.addEventListener(kind, (event) => {
      if (event.defaultPrevented || isTextField(event.target)) return;
      event.preventDefault();
      if (event.dataTransfer !== null) event.dataTransfer.dropEffect = 'none';
    });
};

const isTextField = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest('input, textarea') !== null;
