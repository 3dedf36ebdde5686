/** One IPP printer: finds it at its address, and sends it requests that name it. */
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import type { IppSettings } from '../destination-settings.ts';
import { encryptedPlace, type IppPlace, placesOf } from './ipp-address.ts';
import {
  type Attributes,
  attribute,
  groupOf,
  groupTags,
  type IppMessage,
  type IppValue,
  integer,
  isOk,
  operations,
  statusCodes,
  text,
} from './ipp-message.ts';
import { exchange, isFault, type TransportFault } from './ipp-transport.ts';

type Settings = Pick<IppSettings, 'name' | 'address' | 'certificateSha256'>;
type NamedValues = readonly [string, readonly IppValue[]];

/** Who asks, as the printer lists it. */
const userName = 'SRL Bench';

export interface IppRequest {
  readonly operation: number;
  /** The job, for an operation on one. */
  readonly jobId?: number;
  /** After the character set, the language and the printer, the job and the user, which come by themselves. */
  readonly operationAttributes?: readonly NamedValues[];
  readonly jobAttributes?: readonly NamedValues[];
  readonly document?: Uint8Array;
}

export interface FoundPrinter {
  readonly client: IppClient;
  readonly attributes: Attributes;
}

export class IppClient {
  readonly place: IppPlace;
  readonly #settings: Settings;
  readonly #version: readonly [number, number];
  #requests = 0;

  constructor(place: IppPlace, settings: Settings, version: readonly [number, number] = [2, 0]) {
    this.place = place;
    this.#settings = settings;
    this.#version = version;
  }

  /** The answer whatever its status; a fault where there is none. */
  send(asked: IppRequest): Promise<IppMessage | TransportFault> {
    this.#requests += 1;
    const message: IppMessage = {
      version: this.#version,
      code: asked.operation,
      requestId: this.#requests,
      groups: [
        {
          tag: groupTags.operation,
          attributes: new Map([
            attribute('attributes-charset', text('charset', 'utf-8')),
            attribute('attributes-natural-language', text('naturalLanguage', 'en')),
            attribute('printer-uri', text('uri', this.place.uri)),
            ...(asked.jobId === undefined ? [] : [attribute('job-id', integer(asked.jobId))]),
            attribute('requesting-user-name', text('nameWithoutLanguage', userName)),
            ...(asked.operationAttributes ?? []),
          ]),
        },
        ...(asked.jobAttributes === undefined || asked.jobAttributes.length === 0
          ? []
          : [{ tag: groupTags.job, attributes: new Map(asked.jobAttributes) }]),
      ],
      data: asked.document ?? new Uint8Array(),
    };
    return exchange(this.place, message, this.#settings.certificateSha256);
  }

  /** The attributes of the printer, or why there are none. */
  async printerAttributes(names: readonly string[]): Promise<Attributes | TransportFault | number> {
    const answer = await this.send({
      operation: operations.getPrinterAttributes,
      operationAttributes: [attribute('requested-attributes', ...names.map((name) => text('keyword', name)))],
    });
    if (isFault(answer)) return answer;
    return isOk(answer.code) ? groupOf(answer, groupTags.printer) : answer.code;
  }
}

/**
 * Tries the places of the address one after the other, with IPP/2.0 and then 1.1, over TLS where the printer asks for it.
 * Refuses with the most telling of what went wrong.
 */
export const findPrinter = async (
  settings: Settings,
  names: readonly string[],
): Promise<FoundPrinter | Refusal> => {
  let telling: Refusal | undefined;
  for (const place of placesOf(settings.address)) {
    const found = await tryPlace(place, settings, names);
    if (!isRefusal(found)) return found;
    if (found.code !== 'printer-not-ipp') return found;
    telling = found;
  }
  return telling ?? refusal('printer-not-ipp', { printer: settings.name, address: settings.address });
};

const tryPlace = async (
  place: IppPlace,
  settings: Settings,
  names: readonly string[],
): Promise<FoundPrinter | Refusal> => {
  for (const version of [
    [2, 0],
    [1, 1],
  ] as const) {
    const client = new IppClient(place, settings, version);
    const attributes = await client.printerAttributes(names);
    if (attributes === statusCodes.versionNotSupported || attributes === statusCodes.badRequest) continue;
    if (typeof attributes === 'number') break;
    if (!('fault' in attributes)) return { client, attributes };
    if (attributes.fault === 'encryption-needed' && !place.encrypted) {
      return tryPlace(encryptedPlace(place), settings, names);
    }
    return faultRefusal(attributes.fault === 'broken-off' ? { fault: 'unreachable' } : attributes, settings);
  }
  return refusal('printer-not-ipp', { printer: settings.name, address: settings.address });
};

export const faultRefusal = (fault: TransportFault, settings: Settings): Refusal => {
  const values = { printer: settings.name, address: settings.address };
  switch (fault.fault) {
    case 'unreachable':
      return refusal('printer-unreachable', values);
    case 'broken-off':
      return refusal('printer-went-away', values);
    case 'sign-in-needed':
      return refusal('printer-needs-sign-in', values);
    case 'certificate':
      return settings.certificateSha256 === undefined
        ? refusal('printer-certificate-unknown', { ...values, fingerprint: fault.fingerprint })
        : refusal('printer-certificate-changed', { ...values, fingerprint: fault.fingerprint });
    case 'not-ipp':
    case 'encryption-needed':
      return refusal('printer-not-ipp', values);
  }
};
