/** The pictures that an answers file names, read and tried before anything is recorded. */
import { dirname, resolve } from 'node:path';
import type { Language } from '../domain/message.ts';
import { isRefusal } from '../domain/refusal.ts';
import { stillPictureOf } from '../station/still-picture.ts';
import type { AnswersFile } from './answers-file.ts';
import { failureOf } from './failure.ts';
import { readBytes } from './files.ts';

export interface AnswerPicture {
  readonly check: string;
  readonly pictureBase64: string;
}

/** Paths are taken from the folder of the answers file. Fails at the first file that is no picture. */
export const readAnswerPictures = async (
  answersFile: string,
  pictures: AnswersFile['pictures'],
  language: Language,
): Promise<readonly AnswerPicture[]> => {
  const read: AnswerPicture[] = [];
  for (const [check, paths] of Object.entries(pictures)) {
    for (const path of paths) {
      const bytes = await readBytes(resolve(dirname(answersFile), path), language);
      const still = await stillPictureOf(bytes);
      if (isRefusal(still)) throw failureOf({ ...still, field: `pictures.${check}` }, language);
      read.push({ check, pictureBase64: bytes.toString('base64') });
    }
  }
  return read;
};
