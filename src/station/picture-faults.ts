/** What verification finds wrong with the pictures of the record, and files of the evidence that no event names. */
import { z } from 'zod';
import type { RecordedEvent } from '../domain/event.ts';
import type { EvidenceStore } from '../ledger/evidence-store.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { filesNamedBy } from './kept-pictures.ts';

export const pictureFaultSchema = z.object({
  kind: z.enum(['picture missing', 'picture changed']),
  /** Of the event that says it is kept. */
  seq: z.int(),
  sha256: z.string(),
});

/** A file without an event is no fault: its event may have been refused, or the program ended before it was recorded. */
export const pictureNoteSchema = z.object({
  kind: z.literal('picture not in the record'),
  sha256: z.string(),
});

export interface PictureCheck {
  readonly faults: z.infer<typeof pictureFaultSchema>[];
  readonly notes: z.infer<typeof pictureNoteSchema>[];
}

/** A record with more faults is no less unsound. */
const mostFaults = 1000;

/** Reads every picture that any event of the record names, each once. */
export const checkPictures = async (ledger: Ledger, evidence: EvidenceStore): Promise<PictureCheck> => {
  const faults: PictureCheck['faults'] = [];
  const named = new Set<string>();
  for await (const line of ledger.export()) {
    const recorded = line.includes('"sha256"') ? parsed(line) : undefined;
    if (recorded === undefined) continue;
    for (const sha256 of filesNamedBy(recorded)) {
      if (named.has(sha256)) continue;
      named.add(sha256);
      if (faults.length === mostFaults) continue;
      const state = await evidence.get(sha256);
      if (typeof state === 'string') faults.push({ kind: `picture ${state}`, seq: recorded.seq, sha256 });
    }
  }
  return { faults, notes: await unnamed(evidence, named) };
};

const unnamed = async (
  evidence: EvidenceStore,
  named: ReadonlySet<string>,
): Promise<PictureCheck['notes']> => {
  const notes: PictureCheck['notes'] = [];
  for await (const sha256 of evidence.list()) {
    if (named.has(sha256)) continue;
    notes.push({ kind: 'picture not in the record', sha256 });
    if (notes.length === mostFaults) break;
  }
  return notes;
};

/** An event that was changed past reading is a fault of the record, and told there. */
const parsed = (line: string): RecordedEvent | undefined => {
  try {
    return JSON.parse(line) as RecordedEvent;
  } catch {
    return undefined;
  }
};
