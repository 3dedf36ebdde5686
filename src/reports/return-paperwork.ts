/** What goes with devices to their manufacturer: which they are, why they are out of service, and what is asked. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { DataTable } from './data-table.ts';
import { madeOf, type ReportDevice, serialOf } from './device-facts.ts';
import { fillIn } from './fill-in.ts';
import { heading, prose, whole } from './prose.ts';
import { reasonsCell } from './reasons.ts';
import type { Report } from './render-report.ts';
import type { ReportWords } from './report-words.ts';
import type { ReturnAsk } from './return-asks.ts';
import type { Strip } from './strip.ts';
import { cell, facts, table } from './table.ts';
import { textStyles } from './type-sizes.ts';

export interface ReturnedDevice extends ReportDevice {
  /** Pictures that are kept with its record. */
  readonly pictures: number;
}

export interface ReturnDeclaration {
  readonly condition: string;
  readonly contamination: 'none known' | 'cleaned' | 'contaminated';
}

export interface ReturnContent {
  readonly station: string;
  readonly on: string;
  readonly at: string;
  readonly manufacturer: string;
  readonly contact: string;
  readonly ask: ReturnAsk;
  readonly devices: readonly ReturnedDevice[];
  /** The number of the return batch that they travel in. */
  readonly batch?: number;
  /** Filled in by hand where it is absent. */
  readonly declaration?: ReturnDeclaration;
}

/** It says of every device that it is out of service, and of none that it is fit. */
export const returnPaperwork = (content: ReturnContent, words: ReportWords, widthMm: number): Report => {
  const { station, on, at, manufacturer, contact, ask, devices } = content;
  const strips: Strip[] = [
    heading(words.line('returnTitle'), widthMm, textStyles.title),
    facts(
      [
        [words.line('shipTo'), [manufacturer, contact]],
        [words.line('from'), station],
        [words.line('date'), words.dateLine(on)],
        [words.line('devices'), String(devices.length)],
        ...(content.batch === undefined ? [] : [[words.line('returnBatch'), String(content.batch)] as const]),
      ],
      widthMm,
    ),
    heading(words.line('doNotUse'), widthMm, { ...textStyles.verdict, colour: 'red' }),
    prose(words.tell('returnText'), widthMm),
    heading(words.line('asked'), widthMm),
    prose(words.tell(`ask-${ask}`), widthMm, textStyles.strong),
    prose(words.tell('askedAlways'), widthMm),
    heading(words.line('devices'), widthMm),
    table(
      [
        { title: '#', share: 1.2 },
        { title: words.line('device'), share: 7 },
        { title: words.line('serial'), share: 5.5 },
        { title: words.line('reasons'), share: 13 },
        { title: words.line('pictures'), share: 3.2 },
      ],
      devices.map((returned, index) => [
        cell(String(index + 1)),
        [
          ...cell(returned.modelSheet.model, { ...textStyles.cell, weight: 'bold' }),
          ...cell(words.told(words.length(returned.modelSheet.ratedLengthM))),
          ...cell(formatBenchId(returned.device.benchId), textStyles.soft),
        ],
        [
          ...cell(serialOf(returned.device, words), { ...textStyles.cell, weight: 'bold' }),
          ...cell(words.tell('madeOn', { made: madeMessage(returned, words) }), textStyles.soft),
          ...(returned.device.presumedIdentity === undefined
            ? []
            : cell(words.tell('presumed'), textStyles.soft)),
        ],
        reasonsCell(returned.device.reasons, words),
        cell(String(returned.pictures)),
      ]),
      widthMm,
    ),
    ...declarationStrips(content, words, widthMm),
    whole(words.tell('caution'), widthMm, textStyles.soft, 2),
    heading(words.line('handedOver'), widthMm),
    fillIn([words.line('handedBy'), words.line('receivedBy'), words.line('carrier')], widthMm),
  ];
  return { title: words.line('returnTitle'), station, of: manufacturer, at: new Date(at), strips };
};

/** What is declared of the condition of the devices and of what was on them; lines to fill in where nobody has said it yet. */
const declarationStrips = ({ declaration }: ReturnContent, words: ReportWords, widthMm: number): Strip[] => [
  heading(words.line('declaration'), widthMm),
  declaration === undefined
    ? fillIn([words.line('condition'), words.line('contamination')], widthMm)
    : facts(
        [
          [words.line('condition'), declaration.condition],
          [words.line('contamination'), words.line(`contamination-${declaration.contamination}`)],
        ],
        widthMm,
      ),
];

const madeMessage = ({ device }: ReportDevice, words: ReportWords) =>
  device.dateOfManufacture === '' ? words.message('notReadable') : words.date(device.dateOfManufacture);

export const returnTable = ({ devices, ask }: ReturnContent, words: ReportWords): DataTable => ({
  title: words.line('returnTitle'),
  columns: [
    { title: words.line('benchId'), share: 5 },
    { title: words.line('manufacturer'), share: 5 },
    { title: words.line('model'), share: 5 },
    { title: words.line('serial'), share: 5 },
    { title: words.line('made'), share: 4 },
    { title: words.line('reasons'), share: 14 },
    { title: words.line('pictures'), share: 3 },
    { title: words.line('asked'), share: 8 },
  ],
  rows: devices.map(({ device, modelSheet, pictures }) => [
    formatBenchId(device.benchId),
    modelSheet.manufacturer,
    modelSheet.model,
    device.serial,
    madeOf(device, words),
    device.reasons.map(({ sentence }) => words.inLine(sentence)).join(' · '),
    pictures,
    words.line(`ask-${ask}`),
  ]),
});
