/** What a scanned or typed text is by its form alone, before any register is asked. */
import { parseBenchId } from '../domain/bench-id/bench-id.ts';
import type { BenchId } from '../domain/brand.ts';
import { type CommandName, readCommandSymbol } from '../domain/command-symbol.ts';
import { looksLikeTagText, readTagText, type TagText } from '../domain/tag-text.ts';

export type Scan =
  | { readonly kind: 'command'; readonly command: CommandName }
  | { readonly kind: 'tag'; readonly benchId: BenchId; readonly tag: TagText }
  /** Set out to be a tag of this program, and is none any more. */
  | { readonly kind: 'altered tag' }
  | { readonly kind: 'bench ID'; readonly benchId: BenchId }
  | { readonly kind: 'other'; readonly text: string };

/** A tag text whose bench ID is not an exact codeword was altered. */
export const readScan = (text: string): Scan => {
  const trimmed = text.trim();
  const command = readCommandSymbol(trimmed);
  if (command !== undefined) return { kind: 'command', command };
  const tag = readTagText(trimmed);
  if (tag !== undefined && parseBenchId(tag.benchId).kind === 'exact') {
    return { kind: 'tag', benchId: tag.benchId, tag };
  }
  if (looksLikeTagText(trimmed)) return { kind: 'altered tag' };
  const benchId = parseBenchId(trimmed);
  return benchId.kind === 'exact'
    ? { kind: 'bench ID', benchId: benchId.id }
    : { kind: 'other', text: trimmed };
};
