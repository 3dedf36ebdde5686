/** Opens a kept document in a window of its own. */
import type { BenchId } from '../../../src/domain/brand.ts';
import { call } from '../../station/client.ts';

/** The sentence of the refusal, or `undefined` where it was opened. */
export const openDocument = async (benchId: BenchId, sha256: string): Promise<string | undefined> => {
  const result = await call('held.document', { benchId, sha256 });
  if (!result.ok) return result.error.sentence;
  const { name, mediaType, contentBase64 } = result.output;
  const bytes = Uint8Array.from(atob(contentBase64), (character) => character.charCodeAt(0));
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([bytes], { type: mediaType }));
  link.download = name;
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return undefined;
};
