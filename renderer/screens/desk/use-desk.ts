/** The desk of this window: every scan and every button comes here, and every change is the station's. */
import { useCallback, useRef, useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { CheckInQuestion, DeskRules } from '../../../src/domain/custody/desk-rules.ts';
import type { DeviceSummary } from '../../../src/station/views.ts';
import { useText } from '../../i18n/text.ts';
import { isPast, isUnproved, type Scan, useScanHandler } from '../../scan/scan.ts';
import { call } from '../../station/client.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';
import { useReadyStation, useSignedIn } from '../../station/status.ts';
import { whileUnderWay } from '../../station/under-way.ts';
import {
  cleared,
  type DeskState,
  type DeskUser,
  emptyDesk,
  onward,
  stepBack,
  unfinished,
  withoutNotice,
  withReady,
} from './desk-state.ts';
import { type Returning, useReturning } from './use-returning.ts';
import { useUserLanguage } from './use-user-language.ts';

export interface Desk {
  readonly state: DeskState;
  readonly questions: readonly CheckInQuestion[];
  readonly isBusy: boolean;
  /** An attendant is signed in at this window. */
  readonly isStaffed: boolean;
  /** Somebody is who may take devices back: an attendant, or an inspector. */
  readonly takesBack: boolean;
  readonly preUse: DeskRules['preUse'] | undefined;
  change(change: (desk: DeskState) => DeskState): void;
  /** For whoever is there, or comes next. */
  otherLanguage(): void;
  back(): void;
  clear(): void;
  /** Confirms the inspection before use of everything that is to go out, and lets it go. */
  confirm(): void;
  /** Begins the return of a device that is out, or goes on with one. */
  takeBack(benchId: BenchId): void;
  readonly beginReturn: Returning['begin'];
  readonly answer: Returning['answer'];
  beginHandover(device: DeviceSummary, from: string): void;
  /** The other user's badge was not scanned: the attendant says why. */
  handOver(because: string | undefined, handedOverBy?: string): void;
}

export const useDesk = (): Desk => {
  const { language } = useText();
  const roles = useSignedIn()?.roles ?? [];
  const isStaffed = roles.some((role) => role === 'attendant' || role === 'administrator');
  const takesBack = isStaffed || roles.includes('inspector');
  const today = useReadyStation()?.today;
  const rules = useStationQuery('desk.show', {}).data?.rules;
  const kits = useStationQuery('kit.list', {}).data?.kits ?? [];
  const checkOut = useStationCommand('custody.check-out');
  const transfer = useStationCommand('custody.transfer');
  const [state, setState] = useState<DeskState>(emptyDesk);
  const latest = useRef(state);
  const change: Desk['change'] = useCallback((how) => {
    latest.current = how(latest.current);
    setState(latest.current);
  }, []);
  const questions = rules?.checkIn ?? [];
  const otherLanguage = useUserLanguage(state.user ?? state.incoming?.answeredBy);

  const say = (sentence: string): void =>
    change((desk) => ({ ...desk, notice: { kind: 'refused', sentence: { en: sentence, es: sentence } } }));
  const returning = useReturning({ questions, latest, change, say });
  const beginReturn = returning.begin;

  const takeBadge = async (badge: string): Promise<void> => {
    const found = await call('desk.user', { badge });
    if (!found.ok) return say(found.error.sentence);
    const user = found.output;
    const { incoming, handover, ready } = latest.current;
    if (incoming !== undefined)
      return change((desk) => ({ ...withoutNotice(desk), incoming: { ...incoming, answeredBy: user } }));
    if (handover !== undefined) return handOver(undefined, user.personId);
    if (ready.length > 0 && latest.current.user?.personId !== user.personId)
      return change((desk) => ({ ...desk, notice: unfinished(desk) }));
    change(() => ({ ready, user }));
  };

  const takeDevice = async (device: DeviceSummary): Promise<void> => {
    const { incoming, handover, user } = latest.current;
    if (incoming?.device.benchId === device.benchId) return change(withoutNotice);
    if (incoming !== undefined || handover !== undefined)
      return change((desk) => ({ ...desk, notice: unfinished(desk) }));
    if (user === undefined) return withoutUser(device);
    await ask(device.benchId, user);
  };

  /** The scan of a tag that was never scanned on its device proves it first. */
  const takeTagged = async (device: DeviceSummary, unproved: string | undefined): Promise<void> => {
    if (unproved !== undefined) await call('tag.prove', { text: unproved });
    const { held, incoming } = latest.current;
    const isOfHeld = unproved !== undefined && held?.device.benchId === device.benchId;
    if (isOfHeld && incoming === undefined) return change(cleared);
    await takeDevice(device);
  };

  const takeBack = async (benchId: BenchId): Promise<void> => {
    const shown = await call('device.show', { benchId });
    if (!shown.ok) return say(shown.error.sentence);
    await withoutUser(shown.output.device);
  };

  /** Nobody is there: what is out comes back, and of what is in store somebody says what it is. */
  const withoutUser = async (device: DeviceSummary): Promise<void> => {
    if (!isAway(device))
      return change((desk) => ({ ...cleared(desk), notice: { kind: 'in store', device } }));
    const shown = await call('device.show', { benchId: device.benchId });
    beginReturn(device, shown.ok ? shown.output.device.heldBy : undefined);
  };

  const ask = async (benchId: BenchId, user: DeskUser): Promise<void> => {
    const { expectedOn = today } = latest.current;
    const input = { benchId, userId: user.personId, ...(expectedOn === undefined ? {} : { expectedOn }) };
    const checked = await call('custody.check', input);
    if (!checked.ok) return say(checked.error.sentence);
    const { device, heldBy, refused } = checked.output;
    if (refused === undefined) return change((desk) => withReady(desk, device));
    if (device.custody?.userId === user.personId || device.openCheckIn !== undefined)
      return beginReturn(device, heldBy);
    change((desk) => ({
      ...cleared(desk),
      notice: { kind: 'refused', sentence: refused.sentence, device, heldBy },
    }));
  };

  const takeKit = async (code: string): Promise<boolean> => {
    const kit = kits.find((each) => each.code === code);
    const { user } = latest.current;
    if (kit === undefined || user === undefined) return false;
    change((desk) => ({ ...cleared(desk), kitId: kit.kitId }));
    for (const device of kit.devices) await ask(device.benchId, user);
    return true;
  };

  const confirm = async (): Promise<void> => {
    const { user, ready, kitId, expectedOn = today } = latest.current;
    if (user === undefined || ready.length === 0 || checkOut.isRunning) return;
    const done = await checkOut.run({
      userId: user.personId,
      benchIds: ready.map(({ benchId }) => benchId),
      preUse: { language },
      ...(expectedOn === undefined ? {} : { expectedOn }),
      ...(kitId === undefined ? {} : { kitId }),
    });
    if (!done.ok) return say(done.error.sentence);
    const { checkedOut, refused } = done.output;
    const [first] = refused;
    change(() =>
      first === undefined
        ? { ready: [], notice: { kind: 'gone', user: user.name, count: checkedOut.length } }
        : {
            user,
            ready: [],
            notice: {
              kind: 'refused',
              sentence: {
                en: refused.map(({ sentence }) => sentence.en).join(' '),
                es: refused.map(({ sentence }) => sentence.es).join(' '),
              },
              ...(checkedOut.length === 0 ? {} : { gone: { user: user.name, count: checkedOut.length } }),
            },
          },
    );
  };

  const handOver = async (because: string | undefined, handedOverBy?: string): Promise<void> => {
    const { handover, user, expectedOn = today } = latest.current;
    if (handover === undefined || user === undefined || transfer.isRunning) return;
    const done = await transfer.run({
      benchId: handover.device.benchId,
      toUserId: user.personId,
      preUse: { language },
      ...(because === undefined ? {} : { because }),
      ...(handedOverBy === undefined ? {} : { handedOverBy }),
      ...(expectedOn === undefined ? {} : { expectedOn }),
    });
    if (!done.ok) return say(done.error.sentence);
    change(({ handover: _handover, ...desk }) => ({
      ...desk,
      notice: { kind: 'gone', user: user.name, count: 1 },
    }));
  };

  const take = ({ meaning, text }: Scan): boolean => {
    const { incoming, held, notice } = latest.current;
    const isUnderWay = incoming !== undefined || held !== undefined || notice !== undefined;
    const isWanted =
      isStaffed || (takesBack && (isUnderWay || (meaning.meaning === 'device' && isAway(meaning.device))));
    if (!isWanted) return false;
    switch (meaning.meaning) {
      case 'badge':
        if (!isStaffed && incoming === undefined) return false;
        void whileUnderWay(takeBadge(meaning.badge));
        return true;
      case 'device':
        if (isPast(meaning.tag)) return false;
        void whileUnderWay(takeTagged(meaning.device, isUnproved(meaning.tag) ? text : undefined));
        return true;
      case 'place':
        if (kits.every((kit) => kit.code !== meaning.code)) return false;
        void whileUnderWay(takeKit(meaning.code));
        return true;
      case 'command':
        if (meaning.command === 'cancel' || meaning.command === 'back') {
          change(stepBack);
          return true;
        }
        if (meaning.command === '0') {
          otherLanguage();
          return true;
        }
        if (meaning.command !== 'confirm') return false;
        if (notice !== undefined || (held !== undefined && incoming === undefined)) {
          change(onward);
          return true;
        }
        if (latest.current.ready.length === 0) return false;
        void whileUnderWay(confirm());
        return true;
      default:
        return false;
    }
  };
  useScanHandler(take);

  return {
    state,
    questions,
    isStaffed,
    takesBack,
    takeBack: (benchId) => void whileUnderWay(takeBack(benchId)),
    preUse: rules?.preUse,
    isBusy: checkOut.isRunning || returning.isRunning || transfer.isRunning,
    change,
    otherLanguage,
    back: () => change(stepBack),
    clear: () => change(() => emptyDesk),
    confirm: () => void confirm(),
    beginReturn,
    answer: returning.answer,
    beginHandover: (device, from) => change((desk) => ({ ...cleared(desk), handover: { device, from } })),
    handOver: (because, handedOverBy) => void handOver(because, handedOverBy),
  };
};

/** It is out, or not everything is said about its return. */
const isAway = ({ custody, openCheckIn }: DeviceSummary): boolean =>
  custody !== undefined || openCheckIn !== undefined;
