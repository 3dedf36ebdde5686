/** A value as it stands when it has not changed for a while, so that a search does not run at every keystroke. */
import { useEffect, useState } from 'react';

export const useSettled = <Value>(value: Value, waitMs: number): Value => {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = window.setTimeout(() => setSettled(value), waitMs);
    return () => window.clearTimeout(timer);
  }, [value, waitMs]);
  return settled;
};
