/** Begins the return of the device that the way to the desk names, once somebody is there who may take it back. */
import { useEffect, useRef } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import { navigate } from '../../navigation/route.ts';
import type { Desk } from './use-desk.ts';

export const useReturnOf = (desk: Desk, benchId: BenchId | undefined): void => {
  const latest = useRef(desk);
  useEffect(() => {
    latest.current = desk;
  });
  const isReady = desk.takesBack && desk.questions.length > 0;
  useEffect(() => {
    if (benchId === undefined || !isReady) return;
    latest.current.takeBack(benchId);
    navigate({ screen: 'desk' });
  }, [benchId, isReady]);
};
