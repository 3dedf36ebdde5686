/** How far the walk is: the number of the check, and every zone with the state of its checks; a zone is a jump to it. */
import { Button } from 'react-aria-components';
import type { Check, Zone } from '../../../src/domain/procedure.ts';
import type { InspectionView } from '../../../src/station/views.ts';
import { classes } from '../../design/classes.ts';
import { ZonePictogram } from '../../drawing/zone-pictogram.tsx';
import { useText } from '../../i18n/text.ts';
import { type WalkPlace, zoneSegments } from './walk-order.ts';
import styles from './walk-progress.module.css';

export interface WalkProgressProps {
  readonly checks: readonly Check[];
  readonly inspection: InspectionView;
  readonly place: WalkPlace;
  onGo(place: WalkPlace): void;
}

const marks = { open: '', good: styles.good, finding: styles.finding, 'look again': styles.again } as const;

export const WalkProgress = ({ checks, inspection, place, onGo }: WalkProgressProps) => {
  const { t } = useText();
  const current = place.at === 'check' ? checks.find((check) => check.key === place.key) : undefined;
  const isCurrent = (zone: Zone, keys: readonly string[]) =>
    current !== undefined && current.zone === zone && keys.includes(current.key);
  return (
    <nav className={styles.progress} aria-label={t('walk:progress.zones')}>
      {zoneSegments(checks, inspection).map(({ zone, first, states }) => {
        const done = states.filter(({ state }) => state === 'good' || state === 'finding').length;
        const here = isCurrent(
          zone,
          states.map(({ key }) => key),
        );
        const label = t('walk:progress.segment', {
          zone: t(`walk:zone.${zone}`),
          done,
          count: states.length,
        });
        return (
          <Button
            key={first}
            className={classes(styles.zone, here && styles.here)}
            style={{ flexGrow: 1 + states.length * 0.35 }}
            aria-label={label}
            aria-current={here ? 'step' : false}
            onPress={() => onGo({ at: 'check', key: first })}
          >
            <ZonePictogram zone={zone} />
            <span className={styles.dots}>
              {states.map(({ key, state }) => (
                <span
                  key={key}
                  className={classes(
                    styles.dot,
                    marks[state],
                    place.at === 'check' && place.key === key && styles.now,
                  )}
                />
              ))}
            </span>
          </Button>
        );
      })}
      <Button
        className={classes(styles.zone, styles.verdict, place.at === 'verdict' && styles.here)}
        aria-current={place.at === 'verdict' ? 'step' : false}
        onPress={() => onGo({ at: 'verdict' })}
      >
        {t('walk:progress.verdict')}
      </Button>
    </nav>
  );
};
