/** How closely the frames of a camera and still pictures are looked at. */
import type { Look } from './reader-messages.ts';

/** A still picture: five seconds, and as many dots as a phone's camera gives. */
export const stillLook: Look = { budgetMs: 5000, mostDots: 4096, oursOnly: false };

/** A frame of the camera is out of date after this. */
const frameBudgetMs = 200;
const longestBudgetMs = 3200;
const frameDots = 1280;

/** Of so many frames without a reading one is looked at for longer and whole, so that a slow computer reads too. */
const framesToALongLook = 5;

/** The look at the frame after `frames` others in which nothing was read. Makers' codes are looked for in every other one. */
export const frameLook = (frames: number): Look => {
  const oursOnly = frames % 2 === 1;
  if ((frames + 1) % framesToALongLook > 0) return { budgetMs: frameBudgetMs, mostDots: frameDots, oursOnly };
  const longLooks = Math.floor(frames / framesToALongLook);
  const budgetMs = Math.min(longestBudgetMs, frameBudgetMs * 2 ** (longLooks + 1));
  return { budgetMs, mostDots: stillLook.mostDots, oursOnly };
};
