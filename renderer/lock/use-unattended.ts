/** Warns before the window of whoever is signed in is locked, and tells the station what a person does in it. */
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { unattendedMs, warningSeconds } from '../../src/domain/unattended.ts';
import { isHeldAttended, onAttended, watchActs } from '../station/attended.ts';
import { call } from '../station/client.ts';

/** The station hears of what a person does at most this often, and of the last of it always. */
const tellMs = 10_000;
const lookMs = 500;

/**
 * Seconds until the window is locked, once it is time to say so; watches nothing while `minutes` is absent. The last word
 * is the station's: another window of the same session may be in use.
 */
export const useUnattended = (minutes: number | undefined): number | undefined => {
  const queries = useQueryClient();
  const [secondsLeft, setSecondsLeft] = useState<number>();
  useEffect(() => {
    if (minutes === undefined) return;
    let endsMs = performance.now() + unattendedMs({ unattendedMinutes: minutes });
    let toldMs = performance.now();
    let isToBeTold = false;
    let isAsking = false;
    let isWarned = false;
    const tell = (): void => {
      isToBeTold = false;
      toldMs = performance.now();
      void call('session.attend', {});
    };
    const onAct = (): void => {
      const nowMs = performance.now();
      endsMs = nowMs + unattendedMs({ unattendedMinutes: minutes });
      isToBeTold = true;
      isWarned = false;
      setSecondsLeft(undefined);
      if (nowMs - toldMs >= tellMs) tell();
    };
    const ask = async (): Promise<void> => {
      isAsking = true;
      const answer = await call('session.unattended', {});
      isAsking = false;
      if (!answer.ok) return;
      if (answer.output.isLocked) return void queries.invalidateQueries({ queryKey: ['station.status'] });
      const heldMs = performance.now() + answer.output.secondsLeft * 1000;
      if (!isToBeTold) endsMs = heldMs;
      isWarned = answer.output.secondsLeft <= warningSeconds;
    };
    const look = (): void => {
      const nowMs = performance.now();
      if (isHeldAttended()) onAct();
      if (isToBeTold && nowMs - toldMs >= tellMs) tell();
      const leftMs = endsMs - nowMs;
      const isNear = leftMs <= warningSeconds * 1000;
      if (isNear && !isAsking && (!isWarned || leftMs <= 0)) void ask();
      setSecondsLeft(isNear && isWarned ? Math.max(0, Math.ceil(leftMs / 1000)) : undefined);
    };
    const ends = [onAttended(onAct), watchActs()];
    const timer = window.setInterval(look, lookMs);
    return () => {
      window.clearInterval(timer);
      for (const end of ends) end();
      setSecondsLeft(undefined);
    };
  }, [minutes, queries]);
  return secondsLeft;
};
