/** Whether somebody is at this window: what they do is told here, and what must not be broken off meanwhile. */

const listeners = new Set<() => void>();
let held = 0;

/** Somebody did something: struck a key, pressed, moved, scanned. */
export const attend = (): void => {
  for (const listener of listeners) listener();
};

/** Tells of everything that somebody does; what is returned ends that. */
export const onAttended = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

/** For as long as something is printed, whoever waits for it counts as being there; what is returned ends that. */
export const holdAttended = (): (() => void) => {
  held += 1;
  return () => {
    held -= 1;
    attend();
  };
};

export const isHeldAttended = (): boolean => held > 0;

const acts = ['keydown', 'pointerdown', 'pointermove', 'wheel', 'touchstart'] as const;

/** What a person does in the window counts; what a script makes up does not. What is returned ends it. */
export const watchActs = (): (() => void) => {
  const onAct = (event: Event): void => {
    if (event.isTrusted) attend();
  };
  for (const act of acts) window.addEventListener(act, onAct, { capture: true, passive: true });
  return () => {
    for (const act of acts) window.removeEventListener(act, onAct, { capture: true });
  };
};
