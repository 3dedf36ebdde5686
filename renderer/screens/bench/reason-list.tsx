/** Every reason for removal, in the order of the procedure, with its zone and what it asks for. */
import type { Reason } from '../../../src/domain/verdict.ts';
import { ZonePictogram } from '../../drawing/zone-pictogram.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './reason-list.module.css';

export const ReasonList = ({ reasons }: { readonly reasons: readonly Reason[] }) => {
  const { t, inLanguage } = useText();
  return (
    <ol className={styles.reasons}>
      {reasons.map((reason) => (
        <li key={`${reason.key} ${reason.positionM ?? ''} ${reason.sentence.en}`} className={styles.reason}>
          <ZonePictogram zone={reason.zone} />
          <span className={styles.words}>
            <strong className={styles.sentence}>{inLanguage(reason.sentence)}</strong>
            <span className={styles.zone}>
              {t(`walk:zone.${reason.zone}`)}
              {reason.effect === 'refer-to-manufacturer' && (
                <strong className={styles.refer}>{t('walk:reasons.refer')}</strong>
              )}
            </span>
          </span>
        </li>
      ))}
    </ol>
  );
};
