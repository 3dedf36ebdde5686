/** What it takes to hold a device for a notice: the match, the sentence of its tag, and what an open inspection had found. */
import type { Recalled } from '../../domain/decide/notice.ts';
import type { NoticeText } from '../../domain/recall/notice.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { foundSoFar } from '../found-so-far.ts';
import type { Rules } from '../rules.ts';
import type { WorkControl } from '../work-jobs.ts';
import { type MatchedRow, matchesInRegister } from './match-register.ts';
import { holdSentence } from './notice-words.ts';

/** Progress is in devices of the register; refuses where it is canceled. */
export const recalledBy = async (
  reader: LedgerReader,
  text: NoticeText,
  rules: Rules,
  { signal, onProgress }: WorkControl,
): Promise<readonly Recalled[] | Refusal> => {
  const { total } = await reader.devices({ limit: 1, offset: 0 });
  const recalled: Recalled[] = [];
  let done = 0;
  for await (const { matched, devices } of matchesInRegister(reader, text)) {
    if (signal.aborted) return refusal('notice-canceled');
    for (const row of matched) {
      const each = await asRecalled(reader, text, row, rules);
      if (isRefusal(each)) return each;
      recalled.push(each);
    }
    done += devices;
    onProgress({ done, of: total });
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
