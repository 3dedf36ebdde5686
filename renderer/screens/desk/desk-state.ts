/** What stands at the desk in this window: who is there, what is to go out, and the device whose return is being asked about. */
import type { BenchId, CalendarDate } from '../../../src/domain/brand.ts';
import type { CheckInAnswer } from '../../../src/domain/custody/check-in-answer.ts';
import type { Message } from '../../../src/domain/message.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import type { DeviceSummary } from '../../../src/station/views.ts';

export type DeskUser = OutputOf<'desk.user'>;

/** A device that comes back. `answeredBy` is absent where the attendant answers. */
export interface Incoming {
  readonly device: DeviceSummary;
  readonly heldBy?: string | undefined;
  readonly answeredBy?: DeskUser | undefined;
  readonly answers: readonly CheckInAnswer[];
  /** The choices of the yes that is being said, while the choices are on the screen. */
  readonly yes?: readonly string[] | undefined;
}

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
  | { readonly kind: 'back'; readonly device: DeviceSummary }
  | { readonly kind: 'held'; readonly device: DeviceSummary; readonly result: OutputOf<'custody.check-in'> };

export interface DeskState {
  readonly user?: DeskUser | undefined;
  /** Devices that may go out to the user, in the order in which they were scanned. */
  readonly ready: readonly DeviceSummary[];
  readonly kitId?: string | undefined;
  /** Today where absent. */
  readonly expectedOn?: CalendarDate | undefined;
  readonly incoming?: Incoming | undefined;
  readonly handover?: Handover | undefined;
  readonly notice?: DeskNotice | undefined;
}

export const emptyDesk: DeskState = { ready: [] };

export const withReady = (desk: DeskState, device: DeviceSummary): DeskState => ({
  ...withoutNotice(desk),
  ready: [...desk.ready.filter(({ benchId }) => benchId !== device.benchId), device],
});

export const withoutReady = (desk: DeskState, benchId: BenchId): DeskState => ({
  ...desk,
  ready: desk.ready.filter((device) => device.benchId !== benchId),
});

export const withoutNotice = ({ notice: _notice, ...desk }: DeskState): DeskState => desk;

/** One step back: what is on top goes first, and who is there last. */
export const stepBack = (desk: DeskState): DeskState => {
  if (desk.notice !== undefined) return withoutNotice(desk);
  const { incoming, handover, ready, ...rest } = desk;
  if (incoming !== undefined) return { ...rest, ready, incoming: earlierAnswer(incoming) };
  if (handover !== undefined) return { ...rest, ready };
  const last = ready.at(-1);
  return last === undefined ? emptyDesk : { ...rest, ready: ready.slice(0, -1) };
};

/** The question before; nothing where the first was being asked: the device is not asked about any more. */
const earlierAnswer = (incoming: Incoming): Incoming | undefined => {
  const { yes, answers, ...rest } = incoming;
  if (yes !== undefined) return { ...rest, answers };
  return answers.length === 0 ? undefined : { ...rest, answers: answers.slice(0, -1) };
};

/** What must be finished before something else begins. */
export const unfinished = ({ incoming, handover, user }: DeskState): DeskNotice =>
  incoming !== undefined || handover !== undefined
    ? { kind: 'unfinished' }
    : { kind: 'unfinished', user: user?.name ?? '' };
