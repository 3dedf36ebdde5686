/** What a scanned or typed text is by its form alone, before any register is asked. */
import { parseBenchId } from '../domain/bench-id/bench-id.ts';
import { readBinSymbol } from '../domain/bin-symbol.ts';
import type { BenchId } from '../domain/brand.ts';
import { type CommandName, readCommandSymbol } from '../domain/command-symbol.ts';
import type { MarkingData } from '../domain/marking-data.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';
import { looksLikeTagText, readTagText, type TagText } from '../domain/tag-text.ts';
import { firstUnseen, nameOfCharacter, shown } from './control-characters.ts';
import { readMarkingData } from './read-marking-data.ts';
import { takeOffSymbologyId } from './symbology-identifier.ts';

export type Scan =
  | { readonly kind: 'command'; readonly command: CommandName }
  | { readonly kind: 'tag'; readonly benchId: BenchId; readonly tag: TagText }
  /** Set out to be a tag of this program, and is none any more. */
  | { readonly kind: 'altered tag' }
  | { readonly kind: 'bench ID'; readonly benchId: BenchId }
  /** A maker's own data. `code` is the form in which it is bound to a device, the same from every scanner. */
  | { readonly kind: 'marking data'; readonly code: string; readonly data: MarkingData }
  /** Set out to be a maker's data and is damaged, or is nothing that a symbol can hold. */
  | { readonly kind: 'malformed'; readonly fault: Refusal }
  /** The label of a place where held devices are kept. */
  | { readonly kind: 'place'; readonly code: string }
  /** A badge, a maker's serial number, or anything else: the register knows. */
  | { readonly kind: 'other'; readonly text: string };

/** Longer than any symbol that is read by hand: QR Code holds 4,296 capitals and digits, Data Matrix 2,335 (common practice). */
export const longestScan = 4000;

/** A tag text whose bench ID is not an exact codeword was altered. `currentYear` settles the century of six-digit dates. */
export const readScan = (text: string, currentYear: number): Scan => {
  const { symbologyId, text: data } = takeOffSymbologyId(text.trim());
  const trimmed = data.trim();
  if (trimmed.length > longestScan) {
    return malformed(refusal('scan-too-long', { length: trimmed.length, most: longestScan }));
  }
  if (trimmed === '') return malformed(refusal('scan-empty'));
  const command = readCommandSymbol(trimmed);
  if (command !== undefined) return { kind: 'command', command };
  const place = readBinSymbol(trimmed);
  if (place !== undefined) return { kind: 'place', code: place };
  const tag = readTagText(trimmed);
  if (tag !== undefined && parseBenchId(tag.benchId).kind === 'exact') {
    return { kind: 'tag', benchId: tag.benchId, tag };
  }
  if (looksLikeTagText(trimmed)) return { kind: 'altered tag' };
  const benchId = parseBenchId(trimmed);
  if (benchId.kind === 'exact') return { kind: 'bench ID', benchId: benchId.id };
  return readMarkingData(symbologyId, trimmed, currentYear) ?? plain(trimmed);
};

const malformed = (fault: Refusal): Scan => ({ kind: 'malformed', fault });

const plain = (text: string): Scan => {
  const unseen = firstUnseen(text);
  return unseen === undefined
    ? { kind: 'other', text }
    : malformed(
        refusal('scan-unseen-character', { character: nameOfCharacter(unseen.character), text: shown(text) }),
      );
};
