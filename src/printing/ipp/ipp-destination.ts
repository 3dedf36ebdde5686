/** A network printer as a print destination, spoken to in IPP/2.0 without a driver or a queue in between (RFC 8010, RFC 8011). */
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import type {
  Destination,
  JobState,
  PrinterState,
  PrintJob,
  PrintOptions,
  PrintOutcome,
} from '../destination.ts';
import type { IppSettings } from '../destination-settings.ts';
import { followJob, type JobLook } from '../follow-job.ts';
import { misfitOf } from '../job-fit.ts';
import { problemOf, standstillOf } from '../state-reasons.ts';
import { faultRefusal, findPrinter, type IppClient, type IppRequest } from './ipp-client.ts';
import { documentFor, type IppDocument, stockRefusal } from './ipp-document.ts';
import {
  attribute,
  boolean,
  groupOf,
  groupTags,
  type IppMessage,
  type IppValue,
  isOk,
  numbersOf,
  operations,
  text,
  textsOf,
} from './ipp-message.ts';
import { answerRefusal, endRefusal } from './ipp-refusals.ts';
import { isFault, type TransportFault } from './ipp-transport.ts';
import { jobStateOf } from './job-state.ts';
import {
  askedAttributes,
  conditionOf,
  describePrinter,
  type PrinterDescription,
} from './printer-description.ts';

interface Opened {
  readonly client: IppClient;
  readonly printer: PrinterDescription;
}

export class IppDestination implements Destination {
  readonly #settings: IppSettings;

  constructor(settings: IppSettings) {
    this.#settings = settings;
  }

  async check(): Promise<PrinterState> {
    const opened = await this.#open();
    if (isRefusal(opened)) return { condition: 'unknown', reasons: [], problem: opened };
    const { condition, reasons, makeAndModel } = opened.printer;
    const problem =
      this.#standstill(opened.printer) ??
      problemOf(condition, reasons, this.#settings, this.#settings.address) ??
      stockRefusal(opened.printer, this.#settings);
    return {
      condition,
      reasons: reasons.filter((reason) => reason !== 'none'),
      ...(problem === undefined ? {} : { problem }),
      ...(makeAndModel === undefined ? {} : { makeAndModel }),
    };
  }

  async print(job: PrintJob, options: PrintOptions = {}): Promise<PrintOutcome> {
    const misfit = misfitOf(job, this.#settings);
    if (misfit !== undefined) return misfit;
    const opened = await this.#open();
    if (isRefusal(opened)) return opened;
    const refused = this.#standstill(opened.printer) ?? stockRefusal(opened.printer, this.#settings);
    if (refused !== undefined) return refused;
    const document = await documentFor(job, opened.printer, this.#settings);
    if (isRefusal(document)) return document;
    if (options.signal?.aborted === true) {
      return refusal('printer-job-canceled', { printer: this.#settings.name });
    }
    const jobId = await this.#submit(job, document, opened);
    if (isRefusal(jobId)) return jobId;
    const failed = await this.#follow(jobId, opened, options);
    return failed ?? { printed: true, format: document.format, confirmed: true, jobId: String(jobId) };
  }

  async #open(): Promise<Opened | Refusal> {
    const found = await findPrinter(this.#settings, askedAttributes);
    return isRefusal(found) ? found : { client: found.client, printer: describePrinter(found.attributes) };
  }

  /** A stopped printer is sent nothing: the tag would come out when nobody stands there. */
  #standstill({ acceptingJobs, condition, reasons }: PrinterDescription): Refusal | undefined {
    if (condition === 'stopped') return problemOf(condition, reasons, this.#settings, this.#settings.address);
    return acceptingJobs ? undefined : refusal('printer-not-accepting', { printer: this.#settings.name });
  }

  /** The number of the job. The document goes after the job is made where the printer can do so, else together with it. */
  async #submit(job: PrintJob, document: IppDocument, opened: Opened): Promise<number | Refusal> {
    const name = attribute('job-name', text('nameWithoutLanguage', shortened(job.title)));
    const format = attribute('document-format', text('mimeMediaType', document.format));
    const { jobAttributes, content } = document;
    const can = (operation: number) => opened.printer.operations.has(operation);
    const send = (operation: number, operationAttributes: NamedValues[], rest: Partial<IppRequest>) =>
      this.#ask(opened, { operation, operationAttributes, ...rest });

    if (can(operations.validateJob)) {
      const valid = await send(operations.validateJob, [name, format], { jobAttributes });
      if (isRefusal(valid)) return valid;
    }
    if (!can(operations.createJob) || !can(operations.sendDocument)) {
      const printed = await send(operations.printJob, [name, format], { jobAttributes, document: content });
      return isRefusal(printed) ? printed : this.#jobId(printed);
    }
    const created = await send(operations.createJob, [name], { jobAttributes });
    if (isRefusal(created)) return created;
    const jobId = this.#jobId(created);
    if (isRefusal(jobId)) return jobId;
    const sent = await send(operations.sendDocument, [format, attribute('last-document', boolean(true))], {
      jobId,
      document: content,
    });
    if (!isRefusal(sent)) return jobId;
    await cancel(opened.client, jobId);
    return sent;
  }

  async #ask(opened: Opened, request: IppRequest): Promise<IppMessage | Refusal> {
    const answer = await opened.client.send(request);
    if (isFault(answer)) return this.#lost(answer);
    return answerRefusal(answer, opened.printer, this.#settings) ?? answer;
  }

  /** It answered a moment ago: what is unreachable now went away. */
  #lost(fault: TransportFault): Refusal {
    return faultRefusal(fault.fault === 'unreachable' ? { fault: 'broken-off' } : fault, this.#settings);
  }

  #jobId(answer: IppMessage): number | Refusal {
    const jobId = numbersOf(groupOf(answer, groupTags.job), 'job-id')[0];
    return (
      jobId ?? refusal('printer-not-ipp', { printer: this.#settings.name, address: this.#settings.address })
    );
  }

  #follow(jobId: number, { client, printer }: Opened, options: PrintOptions): Promise<Refusal | undefined> {
    const look = async (): Promise<JobLook | Refusal> => {
      const answer = await client.send({
        operation: operations.getJobAttributes,
        jobId,
        operationAttributes: [
          attribute(
            'requested-attributes',
            ...['job-state', 'job-state-reasons', 'job-state-message'].map((name) => text('keyword', name)),
          ),
        ],
      });
      if (isFault(answer)) return this.#lost(answer);
      if (!isOk(answer.code)) return refusal('printer-went-away', { printer: this.#settings.name });
      const attributes = groupOf(answer, groupTags.job);
      const state = jobStateOf(numbersOf(attributes, 'job-state')[0]) ?? 'processing';
      if (state === 'completed' || state === 'canceled' || state === 'aborted') {
        const message = textsOf(attributes, 'job-state-message')[0];
        const reasons = textsOf(attributes, 'job-state-reasons');
        const failure = endRefusal(state, reasons, message, printer, this.#settings);
        return failure === undefined ? { state } : { state, failure };
      }
      const problem = await this.#standstillNow(client, state);
      return problem === undefined ? { state } : { state, problem };
    };
    return followJob(
      { printer: this.#settings.name, jobId: String(jobId), look, cancel: () => cancel(client, jobId) },
      options,
    );
  }

  async #standstillNow(client: IppClient, job: JobState): Promise<Refusal | undefined> {
    const attributes = await client.printerAttributes(['printer-state', 'printer-state-reasons']);
    if (typeof attributes === 'number' || 'fault' in attributes) return undefined;
    const condition = conditionOf(attributes);
    const reasons = textsOf(attributes, 'printer-state-reasons');
    return standstillOf({ condition, reasons }, job, this.#settings, this.#settings.address);
  }
}

type NamedValues = readonly [string, readonly IppValue[]];

const cancel = async (client: IppClient, jobId: number): Promise<void> => {
  await client.send({ operation: operations.cancelJob, jobId });
};

/** A `name` has 255 octets at most (RFC 8011 §5.1.3). */
const shortened = (title: string): string => [...title].slice(0, 60).join('');
