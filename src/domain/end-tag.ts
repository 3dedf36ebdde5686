/** How the tag that belongs on a device becomes one that did. */
import type { CalendarDate } from './brand.ts';
import type { Device, PastTag } from './device.ts';

/** The past tags of a device once the current one, if any, has ended. */
export const endTag = (
  { currentTag, pastTags }: Device,
  endedOn: CalendarDate,
  because: PastTag['because'],
): PastTag[] =>
  currentTag === undefined ? [...pastTags] : [...pastTags, { ...currentTag, endedOn, because }];
