/** After how long a window that nobody touches is locked; an administrator chooses. */
import { AlertLine } from '../../components/alert-line.tsx';
import { SelectInput } from '../../components/select-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { useReadyStation } from '../../station/status.ts';
import { useIsAdministrator } from '../people/use-is-administrator.ts';
import styles from './setup.module.css';

const choices = [1, 2, 3, 5, 10, 15, 20, 30];

export const UnattendedBox = () => {
  const { t } = useText();
  const mayChange = useIsAdministrator();
  const set = useStationCommand('station.set-unattended');
  const minutes = useReadyStation()?.unattendedMinutes;
  if (minutes === undefined) return null;
  const words = (count: number): string => t('screens:lock.minutes', { count });
  const offered = [...new Set([...choices, minutes])].toSorted((one, other) => one - other);
  return (
    <section className={styles.box} aria-labelledby="unattended">
      <h2 id="unattended">{t('screens:lock.setTitle')}</h2>
      <p>{t('screens:lock.setText')}</p>
      {mayChange ? (
        <SelectInput
          label={t('screens:lock.setLabel')}
          value={String(minutes)}
          options={offered.map((each) => ({ value: String(each), label: words(each) }))}
          onChange={(chosen) => void set.run({ minutes: Number(chosen) })}
        />
      ) : (
        <p>
          <strong>{t('screens:lock.now', { minutes: words(minutes) })}</strong>{' '}
          {t('screens:lock.setByAdministrator')}
        </p>
      )}
      <AlertLine sentence={set.error?.sentence} />
    </section>
  );
};
