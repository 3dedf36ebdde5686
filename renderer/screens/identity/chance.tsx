/** A probability as people count, and as a bar beside the words. */
import { useText } from '../../i18n/text.ts';
import styles from './who.module.css';

export const Chance = ({ probability }: { readonly probability: number }) => {
  const { t } = useText();
  const count = Math.round(probability * 100);
  const words =
    probability < 0.01
      ? t('screens:identity.chanceUnder')
      : probability > 0.99
        ? t('screens:identity.chanceOver')
        : t('screens:identity.chance', { count });
  return (
    <span className={styles.chance}>
      <span className={styles.track} aria-hidden="true">
        <span className={styles.fill} style={{ inlineSize: `${Math.max(count, 1)}%` }} />
      </span>
      <span className={styles.chanceWords}>{words}</span>
    </span>
  );
};
