/** What a plan from the record says of what is missing, and of the devices that are no part of it. */
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import type { HeldRow } from './gather-returns.ts';
import type { MissingFromRecord } from './missing-from-record.ts';
import type { ApartWhy } from './record-input.ts';
import type { ReturnsKey, ReturnsText } from './returns-text.ts';

const missingKeys = {
  currency: 'record-currency',
  maker: 'record-maker',
  'repair terms': 'record-repair-terms',
  'repair price': 'record-repair-price',
  'quote ended': 'record-quote-ended',
  turnaround: 'record-turnaround',
  need: 'record-need',
  'new device': 'record-new-device',
  'price not fixed': 'record-price-not-fixed',
  'observed turnaround': 'record-observed-turnaround',
  'service life': 'record-service-life',
  'new life': 'record-new-life',
} as const satisfies Record<MissingFromRecord['kind'], ReturnsKey>;

export const missingSentence = (
  { kind, manufacturer = '', model, lengthM, devices, on, days = 0 }: MissingFromRecord,
  text: ReturnsText,
): string =>
  text.said(missingKeys[kind], {
    manufacturer,
    model: model?.name ?? '',
    length: lengthM === undefined ? '' : text.length(lengthM),
    devices,
    days,
    date: on === undefined ? '' : text.date(on),
  });

export const apartSentence = ({ device, modelSheet }: HeldRow, why: ApartWhy, text: ReturnsText): string => {
  const values = { id: formatBenchId(device.benchId), manufacturer: modelSheet.manufacturer };
  switch (why.kind) {
    case 'away':
      return why.ready === undefined
        ? text.said('apart-away-unknown', { ...values, batch: why.batch })
        : text.said('apart-away', { ...values, batch: why.batch, month: text.month(why.ready) });
    case 'not here':
      return text.said('apart-not-here', values);
    case 'at the bench':
      return text.said('apart-at-the-bench', values);
    case 'fall case':
      return text.said('apart-fall-case', values);
    case 'step here':
      return text.said('apart-step-here', values);
  }
};
