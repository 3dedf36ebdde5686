/** What was scanned at a place, and what belongs there by the register. */
import { z } from 'zod';
import { benchIdSchema } from '../domain/brand.ts';
import { placeCodeSchema } from '../domain/custody/place-code.ts';
import type { Device } from '../domain/device.ts';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import type { LedgerReader } from '../ledger/ledger.ts';
import { deviceIn } from './lookup.ts';

export const countInputSchema = z.object({
  place: placeCodeSchema,
  scanned: z.array(benchIdSchema).max(2000),
  /** Codes that were scanned there and mean no device. */
  unknown: z.array(z.string().trim().min(1).max(200)).max(500).default([]),
});

const pageSize = 500;

export const scannedDevices = async (
  reader: LedgerReader,
  { scanned }: Pick<z.output<typeof countInputSchema>, 'scanned'>,
): Promise<readonly Device[] | Refusal> => {
  const devices: Device[] = [];
  for (const benchId of new Set(scanned)) {
    const row = await deviceIn(reader, benchId);
    if (isRefusal(row)) return row;
    devices.push(row.device);
  }
  return devices;
};

export const devicesOfPlace = async (reader: LedgerReader, place: string): Promise<readonly Device[]> => {
  const devices: Device[] = [];
  for (let more = true; more; ) {
    const { rows } = await reader.devices({ storedAt: place, limit: pageSize, offset: devices.length });
    devices.push(...rows.map(({ device }) => device));
    more = rows.length === pageSize;
  }
  return devices;
};
