/** Records a notice and holds all that it means in one transaction: all of it, or nothing where it is canceled before the end. */
import { z } from 'zod';
import { decideNotice } from '../../domain/decide/notice.ts';
import type { DomainEvent } from '../../domain/event.ts';
import type { Person } from '../../domain/person.ts';
import { type NoticeText, noticeTextSchema } from '../../domain/recall/notice.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { stationIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';
import type { WorkControl } from '../work-jobs.ts';
import { recalledBy } from './recalled-devices.ts';

export const signedNoticeSchema = z.object({ text: noticeTextSchema, pin: z.string().max(40) });

export const recordedNoticeSchema = z.object({
  notice: z.int(),
  /** Devices that were held for it. */
  held: z.int(),
});
export type RecordedNotice = z.infer<typeof recordedNoticeSchema>;

/** Events that are recorded at a time: between them it can be canceled. */
const eventsAtOnce = 200;

/** `undefined` where it is signed with the PIN of the person. */
export const noticeSignatureFault = (
  { pins, now }: OperationContext,
  person: Person,
  pin: string,
): Promise<Refusal | undefined> => pins.check(person, pin, now());

/**
 * Progress counts the register twice: once as it is held against the notice, and once, by its share, as what is meant is
 * held.
 */
export const recordNotice = async (
  context: OperationContext,
  person: Person,
  text: NoticeText,
  { signal, onProgress }: WorkControl,
): Promise<RecordedNotice | Refusal> => {
  const station = await context.ledger.read(stationIn);
  if (isRefusal(station)) return station;
  const occasion = context.occasion(station);
  let size = 0;
  let events: readonly DomainEvent[] = [];
  const slice = (first: number): readonly DomainEvent[] | Refusal => {
    if (signal.aborted) return refusal('notice-canceled');
    return events.slice(first, first + eventsAtOnce);
  };

  async function* steps() {
    yield {
      occasion,
      decide: async (reader: LedgerReader) => {
        const known = await reader.notices();
        const recalled = await recalledBy(reader, text, context.rules, {
          signal,
          onProgress: ({ done, of }) => {
            size = of;
            onProgress({ done, of: 2 * of });
          },
        });
        if (isRefusal(recalled)) return recalled;
        const notice = (known[0]?.notice ?? 0) + 1;
        const decided = decideNotice({ notice, text }, known, recalled, person, occasion);
        if (isRefusal(decided)) return decided;
        events = decided;
        return slice(0);
      },
    };
    for (let first = eventsAtOnce; first < events.length; first += eventsAtOnce) {
      onProgress({ done: size + Math.floor((size * first) / events.length), of: 2 * size });
      yield { occasion, decide: async () => slice(first) };
    }
    yield { occasion, decide: async () => (signal.aborted ? refusal('notice-canceled') : []) };
  }

  const recorded = await context.ledger.appendAll(steps());
  if (isRefusal(recorded)) return recorded;
  const [first, ...others] = events;
  if (first?.type !== 'notice.recorded') throw new Error('A notice is recorded before what it holds.');
  return { notice: first.notice, held: others.filter(({ type }) => type === 'device.removed').length };
};
