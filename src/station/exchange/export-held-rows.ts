/** The rows of what was done while devices were held: evidence, its documents, fall cases and return batches. */
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import type { Device } from '../../domain/device.ts';
import type { RecordedEvent } from '../../domain/event.ts';
import { touchedBy } from '../../domain/evolve.ts';
import { evolveCaseFile } from '../../domain/evolve-case-file.ts';
import type { CaseFile } from '../../domain/held/case-file.ts';
import type { DocumentFile, RecordedEvidence } from '../../domain/held/evidence.ts';
import type { FallCase } from '../../domain/held/fall-case.ts';
import type { ReturnBatch } from '../../domain/held/return-batch.ts';
import type { RowSink } from './export-rows.ts';

type Kept = Omit<RecordedEvidence, 'covers'> & {
  readonly benchId: string;
  /** Keys of the reasons that it is for, as they were when it was recorded. */
  readonly reasons: readonly string[];
};

/** Keeps all evidence and all case files: of a depot, they are few. */
export class ExportHeldRows {
  readonly #sink: RowSink;
  readonly #nameOf: (personId: string) => string;
  readonly #evidence = new Map<number, Kept>();
  readonly #files = new Map<string, CaseFile>();

  constructor(sink: RowSink, nameOf: (personId: string) => string) {
    this.#sink = sink;
    this.#nameOf = nameOf;
  }

  /** `device` is the one that the event touches, as it is after it. */
  take(recorded: RecordedEvent, device: Device | undefined): void {
    const { seq, event, on, by } = recorded;
    const { caseFile } = touchedBy(event);
    if (caseFile !== undefined) {
      const file = evolveCaseFile(this.#files.get(caseFile), recorded);
      if (file !== undefined) this.#files.set(caseFile, file);
    }
    switch (event.type) {
      case 'evidence.recorded': {
        const { type: _type, covers, benchId, ...entry } = event;
        const reasons = covers.flatMap((place) => device?.reasons[place - 1]?.key ?? []);
        this.#evidence.set(seq, {
          ...entry,
          benchId: formatBenchId(benchId),
          reasons,
          evidence: seq,
          on,
          by,
        });
        this.#documents(recorded, 'evidence', seq, event.documents, benchId);
        return;
      }
      case 'evidence.confirmed':
        this.#change(event.evidence, ({ confirmed, alsoConfirmed = [] }) =>
          confirmed === undefined
            ? { confirmed: { on, by } }
            : { alsoConfirmed: [...alsoConfirmed, { on, by }] },
        );
        return;
      case 'evidence.withdrawn':
        this.#change(event.evidence, () => ({ withdrawn: { on, by, because: event.because } }));
        return;
      case 'fall-case.noted':
        this.#documents(recorded, 'fall case', event.fallCase, event.photos);
        return;
      case 'device.scrapped':
        this.#documents(recorded, 'scrap', undefined, event.photos, event.benchId);
        return;
      default:
        return;
    }
  }

  finish(): void {
    for (const kept of this.#evidence.values()) this.#row(kept);
    for (const file of this.#files.values()) {
      if (file.kind === 'fall case') this.#fallCase(file);
      if (file.kind === 'return batch') this.#returnBatch(file);
    }
  }

  #change(number: number, change: (kept: Kept) => Partial<Kept>): void {
    const kept = this.#evidence.get(number);
    if (kept !== undefined) this.#evidence.set(number, { ...kept, ...change(kept) });
  }

  #documents(
    { on, by }: RecordedEvent,
    of: 'evidence' | 'fall case' | 'scrap',
    number: number | undefined,
    documents: readonly DocumentFile[],
    benchId?: Device['benchId'],
  ): void {
    for (const document of documents)
      this.#sink('documents', {
        ...document,
        benchId: benchId === undefined ? undefined : formatBenchId(benchId),
        of,
        number,
        keptOn: on,
        keptBy: this.#nameOf(by),
      });
  }

  #row({ benchId, reasons, certificate, confirmed, withdrawn, documents, ...kept }: Kept): void {
    const { alsoConfirmed = [] } = kept;
    this.#sink('evidence', {
      evidence: kept.evidence,
      benchId,
      kind: kept.kind,
      reasons: reasons.join('\n'),
      certificate: certificate?.number,
      certificateOn: certificate?.on,
      issuer: certificate?.issuer,
      statement: kept.statement,
      documents: documents.length,
      on: kept.on,
      by: this.#nameOf(kept.by),
      ...this.#signed('agreed', confirmed),
      agreedToo: alsoConfirmed.map(({ on, by }) => `${on}, ${this.#nameOf(by)}`).join('\n'),
      ...this.#signed('withdrawn', withdrawn),
      because: withdrawn?.because,
    });
  }

  #fallCase({ number, phase, facts, devices, photos, custody, closed, ...opened }: FallCase): void {
    const { userId, ...known } = facts;
    this.#sink('fall-cases', {
      ...known,
      fallCase: number,
      phase,
      ...this.#signed('opened', { on: opened.openedOn, by: opened.openedBy }),
      user: userId === undefined ? undefined : this.#nameOf(userId),
      devices: devices.map(formatBenchId).join('\n'),
      photos: photos.length,
      custody: custody.map(({ bagNumber, by, at }) => `${bagNumber}: ${this.#nameOf(by)}, ${at}`).join('\n'),
      ...this.#signed('closed', closed),
      findings: closed?.findings,
    });
  }

  /** A row for each device; one without a device where the batch is empty. */
  #returnBatch({ number, manufacturer, phase, devices, shipped, followUps, ...opened }: ReturnBatch): void {
    const batch = {
      batch: number,
      manufacturer,
      phase,
      ...this.#signed('opened', { on: opened.openedOn, by: opened.openedBy }),
      ...this.#signed('shipped', shipped),
      carrier: shipped?.carrier,
      consignment: shipped?.consignment,
      condition: shipped?.condition,
      contamination: shipped?.contamination,
      askOn: followUps.at(-1)?.nextOn ?? shipped?.followUpOn,
      followUps: followUps.map(({ on, by, note }) => `${on}, ${this.#nameOf(by)}: ${note}`).join('\n'),
    };
    if (devices.length === 0) this.#sink('return-batches', batch);
    for (const { benchId, back } of devices)
      this.#sink('return-batches', {
        ...batch,
        benchId: formatBenchId(benchId),
        ...this.#signed('back', back),
        outcome: back?.outcome,
        certificate: back?.certificate?.number,
        certificateOn: back?.certificate?.on,
        issuer: back?.certificate?.issuer,
      });
  }

  #signed(
    what: string,
    signed: { readonly on: string; readonly by: string } | undefined,
  ): Readonly<Record<string, string | undefined>> {
    return { [`${what}On`]: signed?.on, [`${what}By`]: signed && this.#nameOf(signed.by) };
  }
}
