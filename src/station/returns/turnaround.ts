/** How long a device is away for its repair, by the best that is known. */
import { turnarounds } from '../return-view.ts';
import type { GatheredReturns, HeldRow } from './gather-returns.ts';

export interface Turnaround {
  readonly days: number;
  /** Who says so: its own quote, that of its model, what was entered for its manufacturer, or what came back so far. */
  readonly by: 'quote' | 'model' | 'maker' | 'record';
}

export const turnaroundOf = (
  { device, modelSheet: { manufacturer }, quote }: HeldRow,
  { terms, basis, batches }: GatheredReturns,
): Turnaround | undefined => {
  if (quote?.leadTimeDays !== undefined) return { days: quote.leadTimeDays, by: 'quote' };
  const ofModel = terms.get(device.modelSheetId)?.leadTimeDays;
  if (ofModel !== undefined) return { days: ofModel, by: 'model' };
  const ofMaker = basis.makers.find((each) => each.manufacturer === manufacturer)?.turnaroundDays;
  if (ofMaker !== undefined) return { days: ofMaker, by: 'maker' };
  const seen = turnarounds(batches).find((each) => each.manufacturer === manufacturer);
  return seen === undefined ? undefined : { days: Math.ceil(seen.medianDays), by: 'record' };
};
