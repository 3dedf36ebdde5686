/** What a scanned tag is worth: whether it is ours, unaltered, and the one that belongs on its device now. */
import { z } from 'zod';
import { calendarDateSchema } from './brand.ts';
import { currentTagSchema, type Device, pastTagSchema } from './device.ts';
import type { TagText } from './tag-text.ts';

export const tagJudgementSchema = z.discriminatedUnion('state', [
  z.object({ state: z.literal('current'), tag: currentTagSchema }),
  /** A newer inspection gave a newer tag. */
  z.object({ state: z.literal('superseded'), tag: pastTagSchema, by: currentTagSchema.optional() }),
  /** What it says ended otherwise: why, and since when. */
  z.object({
    state: z.literal('void'),
    tag: pastTagSchema,
    since: calendarDateSchema,
    by: currentTagSchema.optional(),
  }),
  /** Of this station, but the words are not those that were printed. */
  z.object({ state: z.literal('altered') }),
  /** Of another station, or of none. */
  z.object({ state: z.literal('not ours') }),
]);
export type TagJudgement = z.infer<typeof tagJudgementSchema>;

/** `ownMark` is the mark of this station, `ownCode` the authentication code that it makes for the words of the tag. */
export const judgeTag = (
  text: TagText,
  ownMark: string,
  ownCode: string,
  device: Device | undefined,
): TagJudgement => {
  if (text.seal.mark !== ownMark) return { state: 'not ours' };
  if (text.seal.code !== ownCode) return { state: 'altered' };
  if (device === undefined) return { state: 'not ours' };
  const { currentTag, pastTags } = device;
  if (currentTag?.tagNumber === text.tagNumber) return { state: 'current', tag: currentTag };
  const tag = pastTags.find(({ tagNumber }) => tagNumber === text.tagNumber);
  if (tag === undefined) return { state: 'altered' };
  const by = currentTag === undefined ? {} : { by: currentTag };
  return tag.because === 'new inspection'
    ? { state: 'superseded', tag, ...by }
    : { state: 'void', tag, since: tag.endedOn, ...by };
};
