/** A manufacturer's notice that means one device, for the random commands. */
import type { Recalled } from '../../src/domain/decide/notice.ts';
import type { Device } from '../../src/domain/device.ts';
import { type NoticeText, noticeTextSchema } from '../../src/domain/recall/notice.ts';

export const noticeText = (number: number): NoticeText =>
  noticeTextSchema.parse({
    manufacturer: 'Norvane',
    reference: `SN ${number}`,
    issuedOn: '2026-01-02',
    instruction: { en: 'Return it.' },
    affected: [{ models: ['N6'] }],
  });

export const recalledDevice = (device: Device, level: 'certain' | 'possible'): Recalled => ({
  device,
  match: { level, grounds: [level === 'certain' ? 'named' : 'serial-unreadable'] },
  sentence: { en: 'Recalled.', es: 'Retirado.' },
  found: [],
});
