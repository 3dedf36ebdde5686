/** What a station remembers of its PC from one start to the next, beside the record and no part of it. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { writeThrough } from '../../ledger/write-through.ts';

const notesSchema = z.object({
  /** Of the PC, at the last start. */
  zone: z.string().optional(),
  zoneBefore: z.object({ zone: z.string(), changedAt: z.string() }).optional(),
  /** The last verification of everything that came to a result. */
  verified: z.object({ at: z.string(), isSound: z.boolean(), events: z.number() }).optional(),
});
export type Notes = z.infer<typeof notesSchema>;

export const notesFileName = 'station-notes.json';

/** Notes that cannot be read or written are done without: no record hangs on them. */
export class StationNotes {
  readonly #path: string;
  #turn: Promise<void> = Promise.resolve();

  constructor(folder: string) {
    this.#path = join(folder, notesFileName);
  }

  async read(): Promise<Notes> {
    await this.#turn;
    return this.#parsed();
  }

  noteStart(zone: string, at: string): Promise<void> {
    return this.#change((notes) =>
      notes.zone === undefined || notes.zone === zone
        ? { ...notes, zone }
        : { ...notes, zone, zoneBefore: { zone: notes.zone, changedAt: at } },
    );
  }

  noteVerified(verified: NonNullable<Notes['verified']>): Promise<void> {
    return this.#change((notes) => ({ ...notes, verified }));
  }

  #change(change: (notes: Notes) => Notes): Promise<void> {
    this.#turn = this.#turn.then(async () => {
      const before = await this.#parsed();
      const after = JSON.stringify(change(before));
      if (after === JSON.stringify(before)) return;
      await writeThrough(this.#path, Buffer.from(after)).catch(() => undefined);
    });
    return this.#turn;
  }

  async #parsed(): Promise<Notes> {
    try {
      return notesSchema.parse(JSON.parse(await readFile(this.#path, 'utf8')));
    } catch {
      return {};
    }
  }
}
