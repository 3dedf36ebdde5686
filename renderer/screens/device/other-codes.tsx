/** The further codes that mean this device. */
import type { DeviceCard } from '../../../src/station/views.ts';
import { useText } from '../../i18n/text.ts';
import styles from './device.module.css';

export const OtherCodes = ({ device }: { readonly device: DeviceCard }) => {
  const { t } = useText();
  return (
    <section className={styles.detail} aria-labelledby="codes">
      <h2 id="codes">{t('screens:device.codes')}</h2>
      {device.otherCodes.length === 0 ? <p>{t('screens:device.noCodes')}</p> : null}
      <dl className={styles.pairs}>
        {device.otherCodes.map(({ code, kind }) => (
          <div key={code}>
            <dt>{t(`screens:codeKind.${kind}`)}</dt>
            <dd>{code}</dd>
          </div>
        ))}
      </dl>
      {device.standing === 'scrapped' ? null : <p className={styles.soft}>{t('screens:device.bindHint')}</p>}
    </section>
  );
};
