/** Reads the frames of a playing video one after another: one at a time, and always the newest. */
import { frameLook } from './looks.ts';
import type { PictureReader } from './picture-reader.ts';
import type { ReaderAnswer } from './reader-messages.ts';

/** What is returned ends it. The page only grabs a frame and hands it over; all else is done in the worker. */
export const watchFrames = (
  video: HTMLVideoElement,
  reader: PictureReader,
  onAnswer: (answer: ReaderAnswer) => void,
): (() => void) => {
  let isOver = false;
  const watch = async (): Promise<void> => {
    for (let frames = 0; !isOver; frames += 1) {
      await nextFrame(video);
      const frame = isOver ? undefined : await grabbed(video);
      if (frame === undefined) continue;
      const answer = await reader.read(frame, frameLook(frames));
      if (isOver || answer === undefined) return;
      onAnswer(answer);
      if (answer.kind === 'failed') return;
    }
  };
  void watch();
  return () => {
    isOver = true;
  };
};

export const nextFrame = (video: HTMLVideoElement): Promise<void> =>
  new Promise((resolve) => video.requestVideoFrameCallback(() => resolve()));

/** A video that has no picture yet is asked again at its next frame. */
const grabbed = (video: HTMLVideoElement): Promise<ImageBitmap | undefined> =>
  createImageBitmap(video).catch(() => undefined);
