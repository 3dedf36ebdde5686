/** The pictures that the record says are kept, and whether they still are what was kept. */
import { z } from 'zod';
import { type BenchId, calendarDateSchema } from '../domain/brand.ts';
import type { DomainEvent, RecordedEvent } from '../domain/event.ts';
import { keptPictureSchema } from '../domain/picture.ts';
import type { EvidenceStore } from '../ledger/evidence-store.ts';
import type { Ledger, LedgerReader } from '../ledger/ledger.ts';

export const keptPictureViewSchema = keptPictureSchema.extend({
  keptOn: calendarDateSchema,
  /** A person's name. */
  keptBy: z.string(),
  state: z.enum(['kept', 'missing', 'changed']),
  /** A JPEG of at most 320 dots a side; absent unless the picture is what was kept. */
  thumbnailBase64: z.string().optional(),
});

export const pictureFaultSchema = z.object({
  kind: z.enum(['picture missing', 'picture changed']),
  /** Of the event that says it is kept. */
  seq: z.number().int(),
  sha256: z.string(),
});
type PictureFault = z.infer<typeof pictureFaultSchema>;

type PictureKept = Extract<DomainEvent, { type: 'device.picture-kept' }>;
export type RecordedPicture = RecordedEvent & { readonly event: PictureKept };

const isPicture = (recorded: RecordedEvent): recorded is RecordedPicture =>
  recorded.event.type === 'device.picture-kept';

/** Oldest first. */
export const picturesOf = async (
  reader: LedgerReader,
  benchId: BenchId,
): Promise<readonly RecordedPicture[]> => (await reader.eventsOf(benchId)).filter(isPicture);

/** A record with more faults is no less unsound. */
const mostFaults = 1000;

/** Reads every picture that any event of the record names. */
export const pictureFaults = async (
  ledger: Ledger,
  evidence: EvidenceStore,
): Promise<readonly PictureFault[]> => {
  const faults: PictureFault[] = [];
  for await (const line of ledger.export()) {
    const recorded = line.includes('"device.picture-kept"') ? parsed(line) : undefined;
    if (recorded === undefined || !isPicture(recorded)) continue;
    const { seq, event } = recorded;
    const state = await evidence.get(event.sha256);
    if (typeof state === 'string') faults.push({ kind: `picture ${state}`, seq, sha256: event.sha256 });
    if (faults.length === mostFaults) break;
  }
  return faults;
};

/** An event that was changed past reading is a fault of the record, and told there. */
const parsed = (line: string): RecordedEvent | undefined => {
  try {
    return JSON.parse(line) as RecordedEvent;
  } catch {
    return undefined;
  }
};
