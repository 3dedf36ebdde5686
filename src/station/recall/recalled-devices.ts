/** What it takes to hold a device for a notice: the match, the sentence of its tag, and what an open inspection had found. */
import type { Recalled } from '../../domain/decide/notice.ts';
import type { NoticeText } from '../../domain/recall/notice.ts';
import { isRefusal, type Refusal } from '../../domain/refusal.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { foundSoFar } from '../found-so-far.ts';
import type { Rules } from '../rules.ts';
import { type MatchedRow, matchesInRegister } from './match-register.ts';
import { holdSentence } from './notice-words.ts';

export const recalledBy = async (
  reader: LedgerReader,
  text: NoticeText,
  rules: Rules,
): Promise<readonly Recalled[] | Refusal> => {
  const recalled: Recalled[] = [];
  for (const row of await matchesInRegister(reader, text)) {
    const each = await asRecalled(reader, text, row, rules);
    if (isRefusal(each)) return each;
    recalled.push(each);
  }
  return recalled;
};

export const asRecalled = async (
  reader: LedgerReader,
  text: NoticeText,
  { device, match }: Pick<MatchedRow, 'device' | 'match'>,
  rules: Rules,
): Promise<Recalled | Refusal> => {
  const found = await foundSoFar(reader, device.openInspection, rules);
  return isRefusal(found) ? found : { device, match, sentence: holdSentence(text, match), found };
};
