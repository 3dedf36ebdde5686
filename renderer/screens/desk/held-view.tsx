/** A device that is out of service as it came back: every reason, where it goes, its quarantine tag, and what is still to be asked. */
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import styles from './desk.module.css';
import { type HeldDevice, onward } from './desk-state.ts';
import { deviceWords } from './device-words.ts';
import { QuarantineTagLine } from './quarantine-tag-line.tsx';
import type { Desk } from './use-desk.ts';
import type { QuarantineTag } from './use-quarantine-tag.ts';

export interface HeldViewProps extends HeldDevice {
  readonly desk: Desk;
  readonly tag: QuarantineTag;
}

export const HeldView = ({ desk, device, result, tag }: HeldViewProps) => {
  const { t, inLanguage } = useText();
  const { benchId } = device;
  const { heldFor, quarantinePlace, open } = result;
  const isComingOut = tag.step.step === 'printing' || tag.step.step === 'printed';
  return (
    <div className={styles.held} role="alert">
      <h1 className={styles.display}>
        <Icon name="stop" large />
        {t('desk:held', { device: deviceWords(device) })}
      </h1>
      <ul className={styles.points}>
        {heldFor.map(({ key, sentence }) => (
          <li key={key} className={styles.large}>
            {inLanguage(sentence)}
          </li>
        ))}
      </ul>
      <p className={styles.large}>{t('desk:putIt', { place: inLanguage(quarantinePlace) })}</p>
      <QuarantineTagLine tag={tag} />
      {open !== undefined && <p className={styles.large}>{t('desk:stillOpen')}</p>}
      <div className={styles.row}>
        <Button
          look="primary"
          size="large"
          icon="forward"
          autoFocus
          onPress={() => desk.change((state) => onward(state))}
        >
          {t('desk:next')}
        </Button>
        {open !== undefined && (
          <Button size="large" onPress={() => desk.beginReturn({ ...device, openCheckIn: open })}>
            {t('desk:askRest')}
          </Button>
        )}
        {!isComingOut && (
          <Button
            size="large"
            icon="tag"
            onPress={() => navigate({ screen: 'tag', benchId, kind: 'quarantine' })}
          >
            {t('desk:printTag')}
          </Button>
        )}
      </div>
    </div>
  );
};
