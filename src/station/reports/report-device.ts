/** What a report says of a device, and what the record says of its life. */
import type { BenchId, CalendarDate } from '../../domain/brand.ts';
import { competenceOn } from '../../domain/competence.ts';
import type { Device } from '../../domain/device.ts';
import type { DomainEvent, RecordedEvent } from '../../domain/event.ts';
import { knownAs } from '../../domain/known-as.ts';
import type { Person } from '../../domain/person.ts';
import { isRefusal } from '../../domain/refusal.ts';
import type { DeviceRow, LedgerReader } from '../../ledger/ledger.ts';
import type { ReportDevice } from '../../reports/device-facts.ts';
import type { RecordProof } from '../../reports/record-strips.ts';
import type { ReportSignature } from '../../reports/signature-block.ts';
import { namesPicture } from '../kept-pictures.ts';
import type { OperationContext } from '../operation.ts';

export const reportDevice = (
  { device, modelSheet }: DeviceRow,
  nameOf: (personId: string) => string,
): ReportDevice => ({
  device,
  modelSheet,
  ...(device.regularUserId === undefined ? {} : { regularUser: nameOf(device.regularUserId) }),
});

type EventOf<Type extends DomainEvent['type']> = RecordedEvent & {
  readonly event: Extract<DomainEvent, { type: Type }>;
};

export const eventsOfType = <Type extends DomainEvent['type']>(
  events: readonly RecordedEvent[],
  type: Type,
): readonly EventOf<Type>[] =>
  events.filter((recorded): recorded is EventOf<Type> => recorded.event.type === type);

export const signatureOf = async (
  reader: LedgerReader,
  events: readonly RecordedEvent[],
  device: Device,
  inspection: number,
): Promise<{ signature: ReportSignature; event: EventOf<'inspection.signed'>['event'] } | undefined> => {
  const signed = eventsOfType(events, 'inspection.signed').find(
    ({ event }) => event.inspection === inspection,
  );
  if (signed === undefined) return undefined;
  const person = await reader.person(signed.by);
  const { seq, on, at, by, event } = signed;
  const now = { name: person?.name ?? by, badge: person?.badge ?? '' };
  return {
    event,
    signature: {
      ...(person === undefined ? now : knownAs(person, seq)),
      now,
      designation: person && designationOn(person, on, device),
      on,
      at,
      seq,
    },
  };
};

/** The name that a person had with an event; an ID without a person stands for itself. */
export const namesThen = async (reader: LedgerReader): Promise<(personId: string, seq: number) => string> => {
  const people = new Map((await reader.people()).map((person) => [person.personId, person]));
  return (personId, seq) => {
    const person = people.get(personId);
    return person === undefined ? personId : knownAs(person, seq).name;
  };
};

/** The designation on which a person signed for the device on a day. */
const designationOn = (person: Person, on: CalendarDate, device: Device) => {
  const competence = competenceOn(person, on, device);
  return competence.ground === 'designated' ? competence.designation : undefined;
};

/** The state of the record, the latest checkpoint, and the proof that the event is in it, where there is one. */
export const proofOf = async (
  { ledger }: OperationContext,
  seq: number | undefined,
): Promise<RecordProof> => {
  const proof = seq === undefined ? undefined : await ledger.prove(seq);
  return {
    head: await ledger.head(),
    seq,
    checkpoint: await ledger.latestCheckpoint(),
    proof: isRefusal(proof) ? undefined : proof,
  };
};

export const lastEventOf = (events: readonly RecordedEvent[]): number | undefined => events.at(-1)?.seq;

/** How many pictures are kept with the record of a device, of it and of what was found on it. */
export const pictureCountOf = async (reader: LedgerReader, benchId: BenchId): Promise<number> =>
  (await reader.eventsOf(benchId)).filter(namesPicture).length;
