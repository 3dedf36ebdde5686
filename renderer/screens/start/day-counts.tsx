/** The numbers of the day; each leads to its list in the register. */
import { Icon, type IconName } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf, type Route } from '../../navigation/route.ts';
import type { ReadyStation } from '../../station/status.ts';
import styles from './day-counts.module.css';

type CountName = Exclude<keyof ReadyStation['counts'], 'devices' | 'out' | 'ready' | 'overdueReturns'>;

const tiles: readonly { readonly name: CountName; readonly icon: IconName; readonly route: Route }[] = [
  { name: 'inService', icon: 'check', route: { screen: 'register', filter: 'in-service' } },
  { name: 'neverInspected', icon: 'blank', route: { screen: 'register', filter: 'never-inspected' } },
  { name: 'dueSoon', icon: 'clock', route: { screen: 'register', filter: 'due-soon' } },
  { name: 'overdue', icon: 'late', route: { screen: 'register', filter: 'overdue' } },
  { name: 'held', icon: 'stop', route: { screen: 'register', filter: 'held' } },
  { name: 'openInspections', icon: 'bench', route: { screen: 'bench' } },
  { name: 'unprovedTags', icon: 'tag', route: { screen: 'register', filter: 'unproved' } },
];

export interface DayCountsProps {
  readonly counts: ReadyStation['counts'];
  readonly dueSoonDays: number;
}

export const DayCounts = ({ counts, dueSoonDays }: DayCountsProps) => {
  const { t } = useText();
  return (
    <ul className={styles.tiles}>
      {tiles
        .filter(({ name }) => name !== 'unprovedTags' || counts.unprovedTags > 0)
        .map(({ name, icon, route }) => (
          <li key={name}>
            <a className={styles.tile} href={hashOf(route)}>
              <span className={styles.count}>
                <Icon name={icon} />
                {counts[name]}
              </span>
              <span>{t(`screens:start.counts.${name}`, { days: dueSoonDays })}</span>
            </a>
          </li>
        ))}
    </ul>
  );
};
