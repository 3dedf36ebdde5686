/** How an inspection changes with an event. */
import type { RecordedEvent } from './event.ts';
import { amendedInspection } from './evolve-amended.ts';
import type { Inspection } from './inspection.ts';

export const evolveInspection = (
  inspection: Inspection | undefined,
  recorded: RecordedEvent,
): Inspection | undefined => {
  const { event, on, at, by } = recorded;
  if (event.type === 'inspection.started') {
    const { inspection: number, benchId, procedure, reinspection } = event;
    return {
      inspection: number,
      benchId,
      procedure,
      ...(reinspection === undefined ? {} : { reinspection }),
      startedBy: by,
      startedOn: on,
      state: 'open',
      answers: {},
    };
  }
  if (inspection === undefined) return undefined;
  switch (event.type) {
    case 'inspection.answered':
      return {
        ...inspection,
        answers: { ...inspection.answers, [event.check]: { answer: event.answer, by, at } },
      };
    case 'inspection.signed': {
      const { verdict, tagNumber, dueOn, due } = event;
      return {
        ...inspection,
        state: 'signed',
        signed: {
          by,
          on,
          verdict,
          tagNumber,
          ...(dueOn === undefined ? {} : { dueOn }),
          ...(due === undefined ? {} : { dueFor: due.what }),
        },
      };
    }
    case 'record.amended':
      return amendedInspection(inspection, recorded, event);
    case 'inspection.abandoned':
      return { ...inspection, state: 'abandoned', abandoned: { by, on, why: event.why } };
    default:
      return inspection;
  }
};
