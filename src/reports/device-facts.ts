/** What identifies a device on a report. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { Device } from '../domain/device.ts';
import type { ModelSheet } from '../domain/model-sheet.ts';
import type { ReportWords, Told } from './report-words.ts';

export interface ReportDevice {
  readonly device: Device;
  readonly modelSheet: ModelSheet;
  /** The name of its regular user. */
  readonly regularUser?: string | undefined;
}

export type Pair = readonly [string, Told | string];

export const deviceTitle = ({ device, modelSheet }: ReportDevice): string =>
  `${formatBenchId(device.benchId)} · ${modelSheet.manufacturer} ${modelSheet.model}`;

export const serialOf = ({ serial }: Device, words: ReportWords): Told =>
  serial === '' ? words.tell('notReadable') : [serial];

export const lifelineText = (sheet: ModelSheet, words: ReportWords): Told =>
  words.tell('lifelineText', {
    material: words.message(`material-${sheet.lifelineMaterial}`),
    diameter: words.number(sheet.lifelineDiameterMm),
  });

/** In the order of the marking. */
export const identificationOf = (of: ReportDevice, words: ReportWords): readonly Pair[] => {
  const { device, modelSheet } = of;
  return [
    [words.line('benchId'), formatBenchId(device.benchId)],
    [words.line('manufacturer'), modelSheet.manufacturer],
    [words.line('model'), modelSheet.model],
    [words.line('serial'), serialOf(device, words)],
    [words.line('made'), madeOf(device, words)],
    [words.line('ratedLength'), words.told(words.length(modelSheet.ratedLengthM))],
    [words.line('lifeline'), lifelineText(modelSheet, words)],
    [words.line('capacity'), `${modelSheet.capacityKg.from}–${modelSheet.capacityKg.to} kg`],
    [words.line('standard'), modelSheet.standard],
    [words.line('user'), of.regularUser === undefined ? words.tell('nobody') : of.regularUser],
  ];
};

export const madeOf = ({ dateOfManufacture }: Device, words: ReportWords): Told =>
  dateOfManufacture === '' ? words.tell('notReadable') : words.told(words.date(dateOfManufacture));
