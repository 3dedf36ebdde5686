/** The devices that can be drawn for a blind re-inspection today, out of the inspections that were signed lately. */
import type { CalendarDate } from '../../domain/brand.ts';
import { addDays } from '../../domain/calendar.ts';
import type { CustodySpell } from '../../domain/custody/custody.ts';
import { type Drawable, mayBeDrawn } from '../../domain/decide/reinspection.ts';
import type { Inspection } from '../../domain/inspection.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';

const atOnce = 500;

export const drawableDevices = async (
  reader: LedgerReader,
  withinDays: number,
  today: CalendarDate,
): Promise<readonly Drawable[]> => {
  const drawable: Drawable[] = [];
  for (let offset = 0; ; offset += atOnce) {
    const signed = await reader.signedInspections({
      from: addDays(today, -withinDays),
      limit: atOnce,
      offset,
    });
    for (const first of signed) {
      const row = await reader.device(first.benchId);
      if (row === undefined || row.device.lastInspection?.inspection !== first.inspection) continue;
      const [spell] = await reader.custodySpells({ benchId: first.benchId, limit: 1, offset: 0 });
      const each = { device: row.device, first, wentOut: wasOutSince(spell, first) };
      if (mayBeDrawn(each, withinDays, today)) drawable.push(each);
    }
    if (signed.length < atOnce) return drawable;
  }
};

/** By its latest time out. One of the very day counts, for a day does not say what came first. */
const wasOutSince = (spell: CustodySpell | undefined, { signed, startedOn }: Inspection): boolean => {
  const on = signed?.on ?? startedOn;
  return spell !== undefined && (spell.since.on >= on || (spell.ended?.on ?? on) > on);
};
