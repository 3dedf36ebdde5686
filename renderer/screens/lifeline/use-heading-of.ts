/** The words over one inspection on the map: when, which, and how it ended. */
import { useCallback } from 'react';
import type { LifelineInspection } from '../../../src/domain/lifeline/lifeline-inspection.ts';
import { useText } from '../../i18n/text.ts';

export const useHeadingOf = (): ((inspection: LifelineInspection) => string) => {
  const { t, dateText } = useText();
  return useCallback(
    ({ inspection, on, state, verdict, findings, readings }) => {
      const ended =
        verdict === undefined ? t(`evidence:map.state.${state}`) : t(`screens:verdict.${verdict}`);
      const heading = t('evidence:map.row', { date: dateText(on), inspection, ended });
      return findings.length + readings.length === 0 ? `${heading} · ${t('evidence:map.nothing')}` : heading;
    },
    [t, dateText],
  );
};
