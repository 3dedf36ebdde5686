/** `ledger.export`: writes the whole record to a file of the data folder, one event in canonical JSON a line. */
import { createWriteStream } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { z } from 'zod';
import { storageRefusal } from '../../ledger/storage-refusal.ts';
import { defineOperation, everyRole } from '../operation.ts';

export const ledgerExport = defineOperation({
  name: 'ledger.export',
  summary: 'Writes the whole record to a file, one event a line.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({ path: z.string(), events: z.int(), rootHash: z.string() }),
  run: async ({ ledger, folder }) => {
    const exports = join(folder, 'exports');
    const head = await ledger.head();
    const path = join(exports, `record-${head.size}.jsonl`);
    try {
      await mkdir(exports, { recursive: true });
      await pipeline(Readable.from(lines(ledger.export(), head.size)), createWriteStream(path));
    } catch (error) {
      return storageRefusal(error, exports);
    }
    return { path, events: head.size, rootHash: head.rootHash };
  },
});

/** The first `count` events: those under the tree head that is handed out with them. */
async function* lines(events: AsyncIterable<string>, count: number): AsyncIterable<string> {
  let written = 0;
  for await (const event of events) {
    if (written === count) return;
    written += 1;
    yield `${event}\n`;
  }
}
