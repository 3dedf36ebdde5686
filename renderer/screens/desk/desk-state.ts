/** What stands at the desk in this window: who is there, what is to go out, and the device whose return is being asked about. */
import type { BenchId, CalendarDate } from '../../../src/domain/brand.ts';
import type { CheckInAnswer } from '../../../src/domain/custody/check-in-answer.ts';
import type { CheckInQuestion } from '../../../src/domain/custody/desk-rules.ts';
import type { OpenQuestions } from '../../../src/domain/custody/open-check-in.ts';
import type { Message } from '../../../src/domain/message.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import type { DeviceSummary } from '../../../src/station/views.ts';

export type DeskUser = OutputOf<'desk.user'>;

/** A device that comes back. `answeredBy` is absent where the attendant answers. */
export interface Incoming {
  readonly device: DeviceSummary;
  readonly heldBy?: string | undefined;
  readonly answeredBy?: DeskUser | undefined;
  /** What the record asks: every question, until the first doubt was recorded. */
  readonly open: OpenQuestions;
  /** Answers that are not recorded: each of them is no, and nothing was in doubt. */
  readonly answers: readonly CheckInAnswer[];
}

/** A device that is out of service, as it came back: since just now, or since before. */
export interface HeldDevice {
  readonly device: DeviceSummary;
  readonly result: OutputOf<'custody.check-in'>;
}

/** What is asked now, and whether it was answered yes and the question is what it was. */
export interface Asked {
  readonly question: CheckInQuestion;
  readonly isExplaining: boolean;
}

export const askedNow = (
  questions: readonly CheckInQuestion[],
  { open, answers }: Incoming,
): Asked | undefined => {
  const isOpen = ({ key }: CheckInQuestion): boolean =>
    open.unexplained.includes(key) ||
    (open.unanswered.includes(key) && answers.every(({ question }) => question !== key));
  const question = questions.find(isOpen);
  return question && { question, isExplaining: open.unexplained.includes(question.key) };
};

/** A device that passes from one user to another. */
export interface Handover {
  readonly device: DeviceSummary;
  readonly from: string;
}

export type DeskNotice =
  /** It stays here: the sentence is the whole screen. */
  | {
      readonly kind: 'refused';
      readonly sentence: Message;
      readonly device?: DeviceSummary | undefined;
      /** Who has it, where that is why it is refused. */
      readonly heldBy?: string | undefined;
      /** What went out all the same, to whom. */
      readonly gone?: { readonly user: string; readonly count: number } | undefined;
    }
  /** Something on the screen is not finished; `user` has not confirmed yet, where that is it. */
  | { readonly kind: 'unfinished'; readonly user?: string | undefined }
  /** In store, and nobody is there to take it. */
  | { readonly kind: 'in store'; readonly device: DeviceSummary }
  | { readonly kind: 'gone'; readonly user: string; readonly count: number }
  | { readonly kind: 'back'; readonly device: DeviceSummary };

export interface DeskState {
  readonly user?: DeskUser | undefined;
  /** Devices that may go out to the user, in the order in which they were scanned. */
  readonly ready: readonly DeviceSummary[];
  readonly kitId?: string | undefined;
  /** Today where absent. */
  readonly expectedOn?: CalendarDate | undefined;
  readonly incoming?: Incoming | undefined;
  /** With `incoming` of the same device as long as questions are asked about it. */
  readonly held?: HeldDevice | undefined;
  readonly handover?: Handover | undefined;
  readonly notice?: DeskNotice | undefined;
}

export const emptyDesk: DeskState = { ready: [] };

export const withReady = (desk: DeskState, device: DeviceSummary): DeskState => ({
  ...cleared(desk),
  ready: [...desk.ready.filter(({ benchId }) => benchId !== device.benchId), device],
});

export const withoutReady = (desk: DeskState, benchId: BenchId): DeskState => ({
  ...desk,
  ready: desk.ready.filter((device) => device.benchId !== benchId),
});

export const withoutNotice = ({ notice: _notice, ...desk }: DeskState): DeskState => desk;

/** What the desk just said is read: also of the device that was held, once nothing is asked about it any more. */
export const onward = (desk: DeskState): DeskState => {
  const { held, ...read } = withoutNotice(desk);
  return held === undefined || desk.notice !== undefined || desk.incoming !== undefined
    ? withoutNotice(desk)
    : read;
};

/** For whatever begins next. */
export const cleared = (desk: DeskState): DeskState => {
  const { held: _held, ...rest } = withoutNotice(desk);
  return rest;
};

/** One step back: what is on top goes first, and who is there last. What is recorded stays recorded. */
export const stepBack = (desk: DeskState): DeskState => {
  if (desk.notice !== undefined) return withoutNotice(desk);
  const { incoming, handover, held, ready, ...rest } = desk;
  if (incoming !== undefined) {
    const kept = held === undefined ? { ...rest, ready } : { ...rest, ready, held };
    return incoming.answers.length === 0
      ? kept
      : { ...kept, incoming: { ...incoming, answers: incoming.answers.slice(0, -1) } };
  }
  if (held !== undefined || handover !== undefined) return { ...rest, ready };
  const last = ready.at(-1);
  return last === undefined ? emptyDesk : { ...rest, ready: ready.slice(0, -1) };
};

/** What must be finished before something else begins. */
export const unfinished = ({ incoming, handover, user }: DeskState): DeskNotice =>
  incoming !== undefined || handover !== undefined
    ? { kind: 'unfinished' }
    : { kind: 'unfinished', user: user?.name ?? '' };
