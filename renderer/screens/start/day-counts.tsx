/** The numbers of the day; each leads to its list. */
import { Icon, type IconName } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf, type Route } from '../../navigation/route.ts';
import type { ReadyStation } from '../../station/status.ts';
import styles from './day-counts.module.css';

type CountName =
  | 'ready'
  | 'out'
  | 'dueSoon'
  | 'overdue'
  | 'neverInspected'
  | 'held'
  | 'openInspections'
  | 'unprovedTags';

const tiles: readonly { readonly name: CountName; readonly icon: IconName; readonly route: Route }[] = [
  { name: 'ready', icon: 'check', route: { screen: 'register', filter: 'ready' } },
  { name: 'out', icon: 'away', route: { screen: 'register', filter: 'out' } },
  { name: 'dueSoon', icon: 'clock', route: { screen: 'register', filter: 'due-soon' } },
  { name: 'overdue', icon: 'late', route: { screen: 'register', filter: 'overdue' } },
  { name: 'neverInspected', icon: 'blank', route: { screen: 'register', filter: 'never-inspected' } },
  { name: 'held', icon: 'stop', route: { screen: 'held' } },
  { name: 'openInspections', icon: 'bench', route: { screen: 'bench' } },
  { name: 'unprovedTags', icon: 'tag', route: { screen: 'register', filter: 'unproved' } },
];

export interface DayCountsProps {
  readonly counts: ReadyStation['counts'];
  readonly dueSoonDays: number;
  readonly backup: ReadyStation['backup'];
}

export const DayCounts = ({ counts, dueSoonDays, backup }: DayCountsProps) => {
  const { t } = useText();
  return (
    <ul className={styles.tiles}>
      {tiles.map(({ name, icon, route }) => (
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
      <li>
        <a className={styles.tile} href={hashOf({ screen: 'setup', panel: 'keeping' })}>
          <span className={styles.count}>
            <Icon name={backup === 'kept' ? 'check' : 'late'} />
          </span>
          <span>{t(`screens:start.counts.backup.${backup}`)}</span>
        </a>
      </li>
    </ul>
  );
};
