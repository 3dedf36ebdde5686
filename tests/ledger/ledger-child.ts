/** A station in a process of its own. `open FOLDER` tells what opening gave; `append FOLDER` appends until it is killed. */
import { writeSync } from 'node:fs';
import { isRefusal } from '../../src/domain/refusal.ts';
import { openSqliteLedger } from '../../src/ledger/sqlite/sqlite-ledger.ts';
import { inspectedDevice, occasion, setUp } from './sample-events.ts';

const [mode, folder] = process.argv.slice(2);
const ledger = await openSqliteLedger(folder!);
if (isRefusal(ledger)) {
  writeSync(1, JSON.stringify(ledger));
} else if (mode === 'open') {
  writeSync(1, '"opened"');
} else {
  const { size } = await ledger.head();
  if (size === 0) await ledger.append(occasion, async () => setUp);
  for (let n = Math.max(0, (size - setUp.length) / 6); ; n += 1) {
    const recorded = await ledger.append(occasion, async () => inspectedDevice(n));
    if (isRefusal(recorded)) throw new Error(recorded.code);
    writeSync(1, `${recorded.at(-1)!.seq}\n`);
  }
}
