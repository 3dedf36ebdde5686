/** Keeps the window in step with its station: asks for the size of the record, and for everything anew where it grew or the window was locked. */
import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { call } from './client.ts';

/** Two windows agree within a second; between two looks the network of the page is idle for longer than half a second. */
const everyMs = 600;

export const InStep = () => {
  const queries = useQueryClient();
  useEffect(() => {
    let seen: string | undefined;
    let timer: number | undefined;
    let isOver = false;
    const look = async (): Promise<void> => {
      if (!document.hidden) {
        const answer = await call('record.size', {});
        if (isOver) return;
        if (answer.ok) {
          const now = `${answer.output.events} ${answer.output.isLocked === true}`;
          if (seen !== undefined && now !== seen) await queries.invalidateQueries();
          seen = now;
        }
      }
      if (!isOver) timer = window.setTimeout(() => void look(), everyMs);
    };
    const onShown = (): void => {
      if (document.hidden) return;
      window.clearTimeout(timer);
      void look();
    };
    document.addEventListener('visibilitychange', onShown);
    void look();
    return () => {
      isOver = true;
      window.clearTimeout(timer);
      document.removeEventListener('visibilitychange', onShown);
    };
  }, [queries]);
  return null;
};
