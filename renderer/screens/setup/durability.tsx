/** What lasts on a device, said where the printer and its stock are chosen. */
import { useText } from '../../i18n/text.ts';
import styles from './printers.module.css';

const lines = ['outdoors', 'days', 'weeks'] as const;

export const Durability = () => {
  const { t } = useText();
  return (
    <section className={styles.lasts} aria-labelledby="lasts">
      <h3 id="lasts">{t('screens:printers.lasts.title')}</h3>
      <dl>
        {lines.map((line) => (
          <div key={line}>
            <dt>{t(`screens:printers.lasts.${line}`)}</dt>
            <dd>{t(`screens:printers.lasts.${line}Text`)}</dd>
          </div>
        ))}
      </dl>
      <p className={styles.soft}>{t('screens:printers.lasts.mark')}</p>
    </section>
  );
};
