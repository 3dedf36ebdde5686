/** What was corrected of a device and of its inspections, and the way to correct more. */
import type { DeviceCard } from '../../../src/station/views.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useReadyStation } from '../../station/status.ts';
import { CorrectionList } from '../corrections/correction-list.tsx';
import styles from './device.module.css';

export const DeviceCorrections = ({ device }: { readonly device: DeviceCard }) => {
  const { t } = useText();
  const person = useReadyStation()?.person;
  const { benchId, amendments } = device;
  const mayCorrect = person !== undefined && (person.maySign || person.roles.includes('administrator'));
  if (amendments.length === 0 && !mayCorrect) return null;
  return (
    <section className={styles.detail} aria-labelledby="corrections">
      <h2 id="corrections">{t('corrections:made')}</h2>
      <CorrectionList amendments={amendments} />
      {mayCorrect ? (
        <div className={styles.buttons}>
          <Button onPress={() => navigate({ screen: 'corrections', benchId })}>
            {t('corrections:open')}
          </Button>
        </div>
      ) : null}
    </section>
  );
};
