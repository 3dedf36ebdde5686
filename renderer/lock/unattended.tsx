/** The lock of an unattended window: the warning before it, and the screen that shows nothing until a badge is scanned. */
import { createPortal } from 'react-dom';
import { Icon } from '../components/icon.tsx';
import { useText } from '../i18n/text.ts';
import type { ReadyStation } from '../station/status.ts';
import styles from './lock.module.css';
import { LockScreen } from './lock-screen.tsx';
import { useUnattended } from './use-unattended.ts';

/** `station` is as the station says it now, not as it was when the window was locked. */
export const Unattended = ({ station }: { readonly station: ReadyStation }) => {
  const { lockedFor, person, unattendedMinutes } = station;
  const secondsLeft = useUnattended(
    person === undefined || lockedFor !== undefined ? undefined : unattendedMinutes,
  );
  if (lockedFor !== undefined) return <LockScreen lockedFor={lockedFor} />;
  return <Warning secondsLeft={secondsLeft} />;
};

/** Stands over dialogs too, and is read out once, not at each second. */
const Warning = ({ secondsLeft }: { readonly secondsLeft: number | undefined }) => {
  const { t } = useText();
  return createPortal(
    <div className={styles.warningPlace} role="alert" data-react-aria-top-layer="true">
      {secondsLeft === undefined ? null : (
        <div className={styles.warning}>
          <Icon name="clock" large />
          <p>{t('screens:lock.warning')}</p>
          <span className={styles.seconds} aria-hidden="true">
            {secondsLeft}
          </span>
        </div>
      )}
    </div>,
    document.body,
  );
};
