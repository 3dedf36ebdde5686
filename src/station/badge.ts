/** Badge codes: what may be one, and what a code means already. */
import { z } from 'zod';
import { parseBenchId } from '../domain/bench-id/bench-id.ts';
import { readBinSymbol } from '../domain/bin-symbol.ts';
import type { CalendarDate } from '../domain/brand.ts';
import { readCommandSymbol } from '../domain/command-symbol.ts';
import { earlierBadges } from '../domain/earlier-badges.ts';
import type { Person } from '../domain/person.ts';
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
  const held = await badgeHolder(reader, code);
  if (held !== undefined) return held.person.name;
  return reader.deviceByCode(code);
};

export interface BadgeHolder {
  readonly person: Person;
  /** Set where the person has another badge since that day, and this one counts no more. */
  readonly replacedOn?: CalendarDate;
}

/** Whose badge a code is, or was. */
export const badgeHolder = async (reader: LedgerReader, code: string): Promise<BadgeHolder | undefined> => {
  const person = await reader.personByBadge(code);
  if (person !== undefined) return { person };
  for (const other of await reader.people()) {
    const earlier = earlierBadges(other).find(({ badge }) => badge === code.trim());
    if (earlier !== undefined) return { person: other, replacedOn: earlier.replacedOn };
  }
  return undefined;
};
