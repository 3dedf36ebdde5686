/** What was done about held devices, as tables: the evidence for their return, the fall cases, and the return batches. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { BenchId } from '../domain/brand.ts';
import type { RecordedEvidence } from '../domain/held/evidence.ts';
import type { FallCase } from '../domain/held/fall-case.ts';
import type { ReturnBatch } from '../domain/held/return-batch.ts';
import { numberRanges } from '../domain/listing.ts';
import type { Message } from '../domain/message.ts';
import type { DataTable, DataValue } from './data-table.ts';
import type { ReportWords } from './report-words.ts';

type NameOf = (personId: string) => string;

export interface EvidenceRow extends RecordedEvidence {
  readonly benchId: BenchId;
  readonly label: Message;
  /** Whether a second person is needed. */
  readonly isStatement: boolean;
}

const dateOrNothing = (date: string | undefined): DataValue => (date === undefined ? '' : { date });

export const evidenceTable = (
  rows: readonly EvidenceRow[],
  nameOf: NameOf,
  words: ReportWords,
): DataTable => ({
  title: words.line('heldEvidence'),
  columns: [
    { title: words.line('benchId'), share: 5.6 },
    { title: words.line('heldEvidenceKind'), share: 8 },
    { title: words.line('heldForReasons'), share: 4 },
    { title: words.line('heldCertificate'), share: 5 },
    { title: words.line('heldRecorded'), share: 4.6 },
    { title: words.line('by'), share: 5 },
    { title: words.line('heldState'), share: 6.4 },
  ],
  rows: rows.map((row) => [
    formatBenchId(row.benchId),
    words.told(row.label),
    numberRanges(row.covers.toSorted((one, other) => one - other)),
    row.certificate?.number ?? '',
    { date: row.on },
    nameOf(row.by),
    stateOf(row, nameOf, words),
  ]),
});

const stateOf = (
  { withdrawn, confirmed, alsoConfirmed = [], isStatement }: EvidenceRow,
  nameOf: NameOf,
  words: ReportWords,
): DataValue => {
  if (withdrawn !== undefined)
    return words.tell('heldWithdrawn', { on: words.date(withdrawn.on), by: nameOf(withdrawn.by) });
  if (confirmed !== undefined) {
    const agreed = [confirmed, ...alsoConfirmed];
    const { on } = agreed.at(-1) ?? confirmed;
    return words.tell('heldAgreed', {
      on: words.date(on),
      by: agreed.map(({ by }) => nameOf(by)).join(', '),
    });
  }
  return words.tell(isStatement ? 'heldWaits' : 'heldCounts');
};

export const fallCaseTable = (files: readonly FallCase[], nameOf: NameOf, words: ReportWords): DataTable => ({
  title: words.line('fallCases'),
  columns: [
    { title: words.line('heldNumber'), share: 2.6 },
    { title: words.line('fallDay'), share: 4.6 },
    { title: words.line('user'), share: 5 },
    { title: words.line('fallJob'), share: 6 },
    { title: words.line('devices'), share: 5.6 },
    { title: words.line('fallOpened'), share: 6 },
    { title: words.line('fallClosed'), share: 6 },
    { title: words.line('fallFindings'), share: 7 },
  ],
  rows: files.map(({ number, facts, devices, openedOn, openedBy, closed }) => [
    number,
    dateOrNothing(facts.happenedOn),
    facts.userId === undefined ? '' : nameOf(facts.userId),
    facts.job ?? '',
    devices.map(formatBenchId).join(', '),
    words.tell('onBy', { on: words.date(openedOn), by: nameOf(openedBy) }),
    closed === undefined
      ? words.tell('fallOpen')
      : words.tell('onBy', { on: words.date(closed.on), by: nameOf(closed.by) }),
    closed?.findings ?? '',
  ]),
});

/** One row for each device; a batch without a device has one too. */
export const returnBatchTable = (files: readonly ReturnBatch[], words: ReportWords): DataTable => ({
  title: words.line('returnBatches'),
  columns: [
    { title: words.line('heldNumber'), share: 2.6 },
    { title: words.line('manufacturer'), share: 5 },
    { title: words.line('heldState'), share: 4.6 },
    { title: words.line('benchId'), share: 5.6 },
    { title: words.line('batchShipped'), share: 4.6 },
    { title: words.line('batchAsk'), share: 4.6 },
    { title: words.line('batchBack'), share: 4.6 },
    { title: words.line('batchOutcome'), share: 5 },
    { title: words.line('heldCertificate'), share: 5 },
  ],
  rows: files.flatMap(({ number, manufacturer, phase, devices, shipped, followUps }) => {
    const askOn = phase === 'shipped' ? (followUps.at(-1)?.nextOn ?? shipped?.followUpOn) : undefined;
    const none: Partial<ReturnBatch['devices'][number]> = {};
    return (devices.length === 0 ? [none] : devices).map(({ benchId, back }) => [
      number,
      manufacturer,
      words.tell(`batch-${phase}`),
      benchId === undefined ? '' : formatBenchId(benchId),
      dateOrNothing(shipped?.on),
      back === undefined ? dateOrNothing(askOn) : '',
      dateOrNothing(back?.on),
      back === undefined ? '' : words.tell(`outcome-${back.outcome}`),
      back?.certificate?.number ?? '',
    ]);
  }),
});
