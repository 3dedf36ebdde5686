/** What an IPP printer answers instead of taking a job, as a refusal. */
import { type Refusal, type RefusalCode, refusal } from '../../domain/refusal.ts';
import type { IppSettings } from '../destination-settings.ts';
import { sizeText } from '../job-fit.ts';
import { groupOf, groupTags, type IppMessage, isOk, statusCodes, textsOf } from './ipp-message.ts';
import { mediaText } from './media.ts';
import type { PrinterDescription } from './printer-description.ts';

const codes: ReadonlyMap<number, RefusalCode> = new Map([
  [statusCodes.forbidden, 'printer-needs-sign-in'],
  [statusCodes.notAuthenticated, 'printer-needs-sign-in'],
  [statusCodes.notAuthorized, 'printer-needs-sign-in'],
  [statusCodes.documentFormatNotSupported, 'printer-format-refused'],
  [statusCodes.documentFormatError, 'printer-format-refused'],
  [statusCodes.notAcceptingJobs, 'printer-not-accepting'],
  [statusCodes.busy, 'printer-busy'],
  [statusCodes.temporaryError, 'printer-busy'],
  [statusCodes.serviceUnavailable, 'printer-busy'],
]);

/** Undefined where the job was taken as it was asked for; the stock and the copies must not be left out or replaced. */
export const answerRefusal = (
  answer: IppMessage,
  printer: PrinterDescription,
  settings: IppSettings,
): Refusal | undefined => {
  const unsupported = groupOf(answer, groupTags.unsupported);
  const values = {
    printer: settings.name,
    stock: sizeText(settings.stock),
    takes: printer.formats.join(', '),
    most: printer.mostCopies,
  };
  if (unsupported.has('media-col') || unsupported.has('media')) {
    return refusal('printer-size-refused', { ...values, takes: mediaText(printer.supported) });
  }
  if (unsupported.has('copies')) return refusal('printer-copies-refused', { ...values, most: 1 });
  if (unsupported.has('document-format')) return refusal('printer-format-refused', values);
  if (isOk(answer.code)) return undefined;
  const code = codes.get(answer.code);
  if (code !== undefined) return refusal(code, values);
  const said = textsOf(groupOf(answer, groupTags.operation), 'status-message')[0];
  return refusal('printer-job-refused', {
    ...values,
    reasons: said ?? `0x${answer.code.toString(16).padStart(4, '0')}`,
  });
};

/** The reasons after which a completed job is no good print (RFC 8011 §5.3.8). */
const badCompletion = ['job-completed-with-errors'];

/** Why a job that ended brought no print; undefined where it did. */
export const endRefusal = (
  state: string,
  reasons: readonly string[],
  message: string | undefined,
  printer: PrinterDescription,
  settings: IppSettings,
): Refusal | undefined => {
  const name = { printer: settings.name };
  if (state === 'completed' && !reasons.some((reason) => badCompletion.includes(reason))) return undefined;
  if (state === 'canceled') return refusal('printer-job-canceled-there', name);
  if (reasons.some((reason) => /^(unsupported-document-format|document-format-error)$/.test(reason))) {
    return refusal('printer-format-refused', { ...name, takes: printer.formats.join(', ') });
  }
  const said = [message, ...reasons].filter((part) => part !== undefined && part !== '' && part !== 'none');
  return refusal('printer-job-failed', { ...name, reasons: said.join(', ') || state });
};
