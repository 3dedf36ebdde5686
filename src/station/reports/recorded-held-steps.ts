/** What the record says was done about a device while it was held, out of the events that touch it. */
import type { RecordedEvent } from '../../domain/event.ts';
import type { ReleaseRules } from '../../domain/held/release-rules.ts';
import type { RecordedHeldStep } from '../../reports/held-strips.ts';

type Step = Pick<RecordedHeldStep, 'what' | 'values' | 'said'>;

/** Oldest first, as the events are; people by the names that they had then. */
export const recordedHeldSteps = (
  events: readonly RecordedEvent[],
  rules: ReleaseRules,
  nameThen: (personId: string, seq: number) => string,
): readonly RecordedHeldStep[] =>
  events.flatMap((recorded) => {
    const { on, by, seq } = recorded;
    const step = stepOf(recorded, rules, (personId) => nameThen(personId, seq));
    return step === undefined ? [] : [{ on, by: nameThen(by, seq), seq, ...step }];
  });

const stepOf = (
  { event }: RecordedEvent,
  { kinds }: ReleaseRules,
  nameOf: (personId: string) => string,
): Step | undefined => {
  switch (event.type) {
    case 'evidence.recorded': {
      const { kind, certificate, documents, statement } = event;
      const label = kinds.find(({ key }) => key === kind)?.label ?? kind;
      const values = { kind: label, documents: documents.length };
      return certificate === undefined
        ? { what: 'step-statement', values, said: statement }
        : {
            what: 'step-certificate',
            values: { ...values, number: certificate.number, issuer: certificate.issuer, on: certificate.on },
          };
    }
    case 'evidence.confirmed':
      return { what: 'step-agreed', values: { evidence: event.evidence } };
    case 'evidence.withdrawn':
      return { what: 'step-withdrawn', values: { evidence: event.evidence }, said: event.because };
    case 'fall-case.device-joined':
      return { what: 'step-case-opened', values: { fallCase: event.fallCase } };
    case 'fall-case.device-closed':
      return { what: 'step-case-closed', values: { fallCase: event.fallCase } };
    case 'return-batch.device-shipped':
      return { what: 'step-shipped', values: { batch: event.batch } };
    case 'return-batch.device-came-back': {
      const { batch, outcome, certificate } = event;
      return { what: `step-back-${outcome}`, values: { batch, number: certificate?.number ?? '–' } };
    }
    case 'device.released':
      return { what: 'step-released', values: { tagNumber: event.tagNumber } };
    case 'device.scrapped':
      return { what: 'step-scrapped', values: { witness: nameOf(event.witness) } };
    default:
      return undefined;
  }
};
