/** Many tags one after another, each handed on when it is done, with progress and a way to stop. */
import { setImmediate } from 'node:timers/promises';
import type { Refusal } from '../domain/refusal.ts';
import type { PrintableTag } from '../domain/tag-content.ts';
import { renderTagPdf, renderTagRaster, type TagOptions, type TagPdf, type TagRaster } from './render-tag.ts';

export interface BatchProgress {
  readonly done: number;
  readonly total: number;
  /** How many of those done were refused. */
  readonly refused: number;
}

export interface BatchControl {
  /** Called after each tag. */
  readonly onProgress?: (progress: BatchProgress) => void;
  /** Once it is aborted, no further tag is made and its reason is thrown. */
  readonly signal?: AbortSignal;
}

export interface BatchOptions extends TagOptions {
  /** PDF where it is absent. */
  readonly as?: 'pdf' | 'raster';
}

export interface BatchTag {
  /** Place of the content in the list. */
  readonly index: number;
  readonly tag: TagPdf | TagRaster | Refusal;
}

/**
 * In the order of the list. Only the tag that is handed on is held, so memory stays flat however long the list is. A tag
 * that is refused does not stop the others.
 */
export async function* renderTags(
  contents: readonly PrintableTag[],
  options: BatchOptions = {},
  { onProgress, signal }: BatchControl = {},
): AsyncGenerator<BatchTag, void, undefined> {
  const { as = 'pdf', ...tagOptions } = options;
  const render = as === 'pdf' ? renderTagPdf : renderTagRaster;
  let refused = 0;
  for (const [index, content] of contents.entries()) {
    signal?.throwIfAborted();
    const tag = await render(content, tagOptions);
    signal?.throwIfAborted();
    if ('refused' in tag) refused += 1;
    onProgress?.({ done: index + 1, total: contents.length, refused });
    yield { index, tag };
    await setImmediate();
  }
}
