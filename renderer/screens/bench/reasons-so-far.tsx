/** The reasons for removal that are on the table already, kept in sight while the walk goes on. */
import type { Reason } from '../../../src/domain/verdict.ts';
import { useText } from '../../i18n/text.ts';
import styles from './reasons-so-far.module.css';

export const ReasonsSoFar = ({ reasons }: { readonly reasons: readonly Reason[] }) => {
  const { t, inLanguage } = useText();
  return (
    <section className={styles.reasons} aria-live="polite">
      <h2 className={styles.title}>
        {reasons.length === 0 ? t('walk:reasons.none') : `${t('walk:reasons.soFar')}: ${reasons.length}`}
      </h2>
      {reasons.length === 0 ? null : (
        <ol className={styles.list}>
          {reasons.map((reason) => (
            <li key={`${reason.key} ${reason.positionM ?? ''} ${reason.sentence.en}`}>
              {inLanguage(reason.sentence)}
            </li>
          ))}
        </ol>
      )}
    </section>
  );
};
