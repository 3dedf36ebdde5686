/** Badge codes: what may be one, and what a code means already. */
import { z } from 'zod';
import { parseBenchId } from '../domain/bench-id/bench-id.ts';
import { readBinSymbol } from '../domain/bin-symbol.ts';
import { readCommandSymbol } from '../domain/command-symbol.ts';
import { looksLikeTagText } from '../domain/tag-text.ts';
import { takeOffSymbologyId } from '../intake/symbology-identifier.ts';
import type { LedgerReader } from '../ledger/ledger.ts';

/** Printable characters as a scanner types them, without a symbology identifier; long enough not to be hit by chance. */
export const badgeCodeSchema = z
  .string()
  .trim()
  .overwrite((text) => takeOffSymbologyId(text).text)
  .regex(/^[\x21-\x7e]{4,40}$/);

/** The name of the kind of our own code that a text is, or `undefined` where it is none of ours. */
export const ownCodeMeaning = (code: string): string | undefined => {
  if (readCommandSymbol(code) !== undefined) return 'command symbol';
  if (readBinSymbol(code) !== undefined) return 'bin label';
  if (looksLikeTagText(code)) return 'tag';
  return parseBenchId(code).kind === 'exact' ? 'bench ID' : undefined;
};

/** What a code means at this station, in words, or `undefined` where it is free. */
export const badgeMeaning = async (reader: LedgerReader, code: string): Promise<string | undefined> => {
  const own = ownCodeMeaning(code);
  if (own !== undefined) return own;
  const person = await reader.personByBadge(code);
  if (person !== undefined) return person.name;
  return reader.deviceByCode(code);
};
