/** A long list that shows its beginning, and more of it whenever it is asked to. */
import { useState } from 'react';

export interface More {
  readonly shown: number;
  readonly isMore: boolean;
  show(): void;
}

export const useMore = (count: number, step: number): More => {
  const [limit, setLimit] = useState(step);
  return { shown: Math.min(count, limit), isMore: count > limit, show: () => setLimit(limit + step) };
};
