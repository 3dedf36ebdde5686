/** Why a device is held, reason by reason, and what must exist for each before it returns. */
import type { HeldView } from '../../../src/station/held-view.ts';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './held.module.css';

export const ReasonPanel = ({ held }: { readonly held: HeldView }) => {
  const { t, dateText, inLanguage } = useText();
  return (
    <section className={styles.panel} aria-labelledby="held-reasons">
      <h2 id="held-reasons">{t('held:reasons')}</h2>
      <ol className={styles.list}>
        {held.reasons.map(({ number, sentence, since, missing }) => (
          <li key={number} className={styles.item}>
            <span className={styles.reason}>
              {number}. {inLanguage(sentence)}
            </span>
            {since === undefined ? null : (
              <span className={styles.soft}>{t('held:reasonSince', { date: dateText(since) })}</span>
            )}
            {missing.length === 0 ? (
              <span className={styles.sign}>
                <Icon name="check" />
                {t('held:there')}
              </span>
            ) : (
              <ul className={styles.list}>
                {missing.map(({ kinds, unconfirmed, stillToAgree = 1 }) => (
                  <li key={kinds.map(({ key }) => key).join()} className={styles.sign}>
                    <Icon name="blank" />
                    <span>
                      {unconfirmed === undefined
                        ? kinds.map((kind) => inLanguage(kind.missing)).join(` ${t('held:or')} `)
                        : t('held:unconfirmed', { evidence: unconfirmed, count: stillToAgree })}
                    </span>
                  </li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
};
