/** How closely the frames of a camera and still pictures are looked at. */
import type { Look } from './reader-messages.ts';

/** A still picture: five seconds, and as many dots as a phone's camera gives. */
export const stillLook: Look = { budgetMs: 5000, mostDots: 4096, oursOnly: false };

/** A frame of the camera is out of date after this. */
const frameBudgetMs = 200;
/** Enough to weigh a worn tag, on a slow computer the second. */
const longBudgetsMs = [1200, 2400] as const;
const frameDots = 1280;

/** Of so many frames without a reading one is looked at for longer and whole: a worn tag takes more than a frame’s time. */
const framesToALongLook = 5;

/** The look at the frame after `frames` others in which nothing was read. Makers' codes are looked for in every other one. */
export const frameLook = (frames: number): Look => {
  const oursOnly = frames % 2 === 1;
  if ((frames + 1) % framesToALongLook > 0) return { budgetMs: frameBudgetMs, mostDots: frameDots, oursOnly };
  const [first, later] = longBudgetsMs;
  const budgetMs = frames < framesToALongLook ? first : later;
  return { budgetMs, mostDots: stillLook.mostDots, oursOnly };
};
