/** Every reason for which a device is out of service, in order, and who removed it. */
import type { DeviceCard } from '../../../src/station/views.ts';
import { useText } from '../../i18n/text.ts';
import styles from './next-action.module.css';

export const RemovalReasons = ({ device }: { readonly device: DeviceCard }) => {
  const { t, inLanguage } = useText();
  if (device.reasons.length === 0) return null;
  return (
    <>
      <h3>{t('screens:device.reasons')}</h3>
      <ol className={styles.reasons}>
        {device.reasons.map((reason) => (
          <li key={`${reason.key} ${reason.positionM ?? ''} ${reason.sentence.en}`}>
            {inLanguage(reason.sentence)}
          </li>
        ))}
      </ol>
      {device.removedBy === undefined ? null : (
        <p>{t('screens:device.removedBy', { name: device.removedBy })}</p>
      )}
    </>
  );
};
