/** The findings of the page itself, looked at when the component comes, and anew when it is asked. */
import { useCallback, useEffect, useState } from 'react';
import type { Finding } from '../../../src/domain/health/finding.ts';
import { lookAtPage } from './page-findings.ts';

export interface PageFindings {
  readonly findings: readonly Finding[];
  lookAgain(): void;
}

export const usePageFindings = (): PageFindings => {
  const [findings, setFindings] = useState<readonly Finding[]>([]);
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    let isOver = false;
    // The number of the turn is all that a new look needs.
    void turn;
    void lookAtPage().then((found) => {
      if (!isOver) setFindings(found);
    });
    return () => {
      isOver = true;
    };
  }, [turn]);
  return { findings, lookAgain: useCallback(() => setTurn((before) => before + 1), []) };
};
