/** A process that opens a station, then asks it for a command sheet, and says which packages it had imported by each of them. */
import { mkdtemp, rm } from 'node:fs/promises';
import { register } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { MessageChannel, receiveMessageOnPort } from 'node:worker_threads';
import { isRefusal } from '../../src/domain/refusal.ts';

const { port1: heard, port2: port } = new MessageChannel();
register('./told-imports.ts', import.meta.url, { data: { port }, transferList: [port] });

const packages = new Set<string>();
const soFar = (): readonly string[] => {
  for (let told = receiveMessageOnPort(heard); told !== undefined; told = receiveMessageOnPort(heard))
    packages.add(String(told.message));
  return [...packages].sort();
};

const folder = await mkdtemp(join(tmpdir(), 'srl-bench-modules-'));
try {
  const { openStation } = await import('../../src/station/station.ts');
  const station = await openStation({ folder });
  if (isRefusal(station)) throw new Error(station.code);
  const call = async (operation: string): Promise<void> => {
    const result = await station.call({ session: 'window', operation, input: {}, language: 'en' });
    if (!result.ok) throw new Error(`${operation}: ${result.error.sentence}`);
  };
  await call('station.status');
  const opened = soFar();
  await call('command-sheet.show');
  const drawn = soFar();
  await station.close();
  process.stdout.write(JSON.stringify({ opened, drawn }));
} finally {
  heard.close();
  await rm(folder, { recursive: true, force: true });
}
