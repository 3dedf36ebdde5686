/** No rush-through: what is on the screen takes an answer only after it has stood there long enough to be asked. */
import { useEffect, useState } from 'react';

/**
 * Common practice, no source: whoever reads one of the questions aloud takes longer; thirty returns of three questions wait
 * a minute and a half altogether. An answer that comes sooner counts for nothing and makes the moment begin anew, so that
 * pressing on without looking never gets to the end, while a scan or a press after looking is taken at once.
 */
const askedMs = 1_000;

export interface AskedFirst {
  readonly isAsked: boolean;
  /** An answer came before its time. */
  readonly wasRushed: boolean;
  /** Gives the answer, or lets the moment begin anew. */
  take(answer: () => void): void;
}

interface Moment {
  readonly what: string;
  /** How often it began anew. */
  readonly times: number;
}

/** `what` tells one question from another; of the same one the moment passes once. */
export const useAskedFirst = (what: string): AskedFirst => {
  const [asked, setAsked] = useState<Moment>();
  const [rushed, setRushed] = useState<Moment>({ what, times: 0 });
  const times = rushed.what === what ? rushed.times : 0;
  const isAsked = asked?.what === what && asked.times === times;
  useEffect(() => {
    const timer = window.setTimeout(() => setAsked({ what, times }), askedMs);
    return () => window.clearTimeout(timer);
  }, [what, times]);
  return {
    isAsked,
    wasRushed: times > 0,
    take: (answer) => (isAsked ? answer() : setRushed({ what, times: times + 1 })),
  };
};
