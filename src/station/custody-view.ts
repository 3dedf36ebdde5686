/** What the screens are shown of custody, and how it is made from the record. */
import { z } from 'zod';
import { benchIdSchema, type CalendarDate } from '../domain/brand.ts';
import { type CustodySpell, custodySpellSchema } from '../domain/custody/custody.ts';
import type { Message } from '../domain/message.ts';
import { messageSchema } from '../domain/message.ts';
import type { Refusal } from '../domain/refusal.ts';
import type { DeviceRow, LedgerReader } from '../ledger/ledger.ts';
import { sentenceOf } from './sentence.ts';
import { deviceSummary, deviceSummarySchema, namesOf } from './views.ts';

/** In both languages: who stands at the desk may read another one than the window. */
export const refusedDeviceSchema = z.object({
  benchId: benchIdSchema,
  code: z.string(),
  sentence: messageSchema,
});
export type RefusedDevice = z.infer<typeof refusedDeviceSchema>;

export const inBothLanguages = (refused: Refusal): Message => ({
  en: sentenceOf(refused, 'en'),
  es: sentenceOf(refused, 'es'),
});

export const outDeviceSchema = z.object({
  device: deviceSummarySchema,
  user: z.string(),
  /** True where it was expected back before today. */
  overdue: z.boolean(),
});
export type OutDevice = z.infer<typeof outDeviceSchema>;

export const outDevice = (
  row: DeviceRow,
  today: CalendarDate,
  dueSoonDays: number,
  name: (personId: string) => string,
): OutDevice => {
  const { custody } = row.device;
  const { userId = '', expectedOn, lostOn } = custody ?? {};
  return {
    device: deviceSummary(row, today, dueSoonDays),
    user: name(userId),
    overdue: lostOn === undefined && expectedOn !== undefined && expectedOn < today,
  };
};

/** One time that somebody had a device; whoever did something is named. */
export const spellViewSchema = custodySpellSchema.extend({
  user: z.string(),
  manufacturer: z.string(),
  model: z.string(),
  serial: z.string(),
});
export type SpellView = z.infer<typeof spellViewSchema>;

export const spellViews = async (
  reader: LedgerReader,
  spells: readonly CustodySpell[],
): Promise<SpellView[]> => {
  const name = await namesOf(reader);
  const views: SpellView[] = [];
  for (const spell of spells) {
    const row = await reader.device(spell.benchId);
    views.push({
      ...spell,
      user: name(spell.userId),
      handedOutBy: name(spell.handedOutBy),
      ...(spell.ended === undefined ? {} : { ended: { ...spell.ended, by: name(spell.ended.by) } }),
      manufacturer: row?.modelSheet.manufacturer ?? '',
      model: row?.modelSheet.model ?? '',
      serial: row?.device.serial ?? '',
    });
  }
  return views;
};
