/** Devices that come back to this window: one question after another, and every doubt recorded in the moment in which it is said. */
import { useRef } from 'react';
import type { CheckInAnswer } from '../../../src/domain/custody/check-in-answer.ts';
import type { CheckInQuestion } from '../../../src/domain/custody/desk-rules.ts';
import type { DeviceSummary } from '../../../src/station/views.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { askedNow, cleared, type DeskState, type Incoming, withoutNotice } from './desk-state.ts';

export interface Returning {
  readonly isRunning: boolean;
  begin(device: DeviceSummary, heldBy?: string): void;
  answer(answer: CheckInAnswer): void;
}

export interface ReturningAt {
  readonly questions: readonly CheckInQuestion[];
  readonly latest: { readonly current: DeskState };
  change(change: (desk: DeskState) => DeskState): void;
  say(sentence: string): void;
}

export const useReturning = ({ questions, latest, change, say }: ReturningAt): Returning => {
  const checkIn = useStationCommand('custody.check-in');
  const isSending = useRef(false);

  const begin: Returning['begin'] = (device, heldBy) =>
    change((desk) => ({
      ...cleared(desk),
      incoming: {
        device,
        open: device.openCheckIn ?? { unanswered: questions.map(({ key }) => key), unexplained: [] },
        answers: [],
        ...(heldBy === undefined ? {} : { heldBy }),
        ...(desk.user === undefined ? {} : { answeredBy: desk.user }),
      },
    }));

  const send = async (incoming: Incoming): Promise<void> => {
    const { device, answeredBy, answers } = incoming;
    const done = await checkIn.run({
      benchId: device.benchId,
      answers: [...answers],
      withoutCheckOut: device.custody === undefined,
      ...(answeredBy === undefined ? {} : { answeredBy: answeredBy.personId }),
    });
    const { incoming: asking, held, ...desk } = latest.current;
    if (!done.ok) {
      change(() => (held === undefined ? desk : { ...desk, held }));
      return say(done.error.sentence);
    }
    const result = done.output;
    const quarantineTag = result.quarantineTag ?? held?.result.quarantineTag;
    const isHeld = {
      device,
      result: { ...result, ...(quarantineTag === undefined ? {} : { quarantineTag }) },
    };
    change(() => {
      if (!result.held) return { ...desk, notice: { kind: 'back', device } };
      const { open } = result;
      return { ...desk, held: isHeld, ...(open && asking && { incoming: { ...asking, open, answers: [] } }) };
    });
  };

  const answer = async (given: CheckInAnswer): Promise<void> => {
    const { incoming, held } = latest.current;
    if (incoming === undefined || isSending.current) return;
    if (askedNow(questions, incoming)?.question.key !== given.question) return;
    const answered = { ...incoming, answers: [...incoming.answers, given] };
    change((desk) => ({ ...withoutNotice(desk), incoming: answered }));
    const isBegun = held !== undefined || incoming.device.openCheckIn !== undefined;
    if (given.said === 'no' && !isBegun && askedNow(questions, answered) !== undefined) return;
    isSending.current = true;
    await send(answered);
    isSending.current = false;
  };

  return { isRunning: checkIn.isRunning, begin, answer: (given) => void answer(given) };
};
