/**
 * A station in a process of its own. `open FOLDER` tells what opening gave; `append FOLDER` signs inspections until it is killed,
 * and prints a line for everything that was acknowledged: the number of the last event, and the SHA-256 of its bytes.
 */
import { createHash } from 'node:crypto';
import { writeSync } from 'node:fs';
import type { DomainEvent } from '../../src/domain/event.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import { canonicalJson } from '../../src/ledger/canonical-json.ts';
import { checkpointKeyOf } from '../../src/ledger/checkpoint-key.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import { openSqliteLedger } from '../../src/ledger/sqlite/sqlite-ledger.ts';
import { inspectedDevice, occasion, setUp } from './sample-events.ts';

const append = async (ledger: Ledger, events: readonly DomainEvent[]): Promise<void> => {
  const recorded = await ledger.append(occasion, async () => events);
  if (isRefusal(recorded)) throw new Error(recorded.code);
  const last = recorded.at(-1)!;
  writeSync(1, `${last.seq} ${createHash('sha256').update(canonicalJson(last)).digest('hex')}\n`);
};

/** An inspection is begun and answered in one breath, and signed in another. */
const sign = async (ledger: Ledger): Promise<void> => {
  const { size } = await ledger.head();
  const { publicKey } = await checkpointKeyOf(ledger);
  if (size === 0) await append(ledger, [...setUp, { type: 'station.key-made', publicKey }]);
  for (let n = await devices(ledger); ; n += 1) {
    const events = inspectedDevice(n);
    const open = await ledger.read((reader) => reader.inspection(n + 1));
    if (open === undefined) await append(ledger, events.slice(0, -1));
    await append(ledger, events.slice(-1));
  }
};

/** How many inspections are signed: that many devices are done with. */
const devices = (ledger: Ledger): Promise<number> =>
  ledger.read(async (reader) => {
    const next = await reader.nextInspectionNumber();
    const last = await reader.inspection(next - 1);
    return last?.state === 'open' ? next - 2 : next - 1;
  });

const run = async (mode: string, folder: string): Promise<void> => {
  const ledger = await openSqliteLedger(folder);
  if (isRefusal(ledger)) writeSync(1, JSON.stringify(ledger));
  else if (mode === 'open') writeSync(1, '"opened"');
  else await sign(ledger);
};

const [mode = '', folder = ''] = process.argv.slice(2);
void run(mode, folder);
