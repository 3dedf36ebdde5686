/** What happens to the device now: back into use until its due date, or locked away. */
import type { TagContent } from '../../../src/domain/tag-content.ts';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './after-tag.module.css';

export interface AfterTagProps {
  readonly content: TagContent;
  /** True once the tag on the device was scanned here. */
  readonly isProved: boolean;
}

export const AfterTag = ({ content, isProved }: AfterTagProps) => {
  const { t, dateText, inLanguage } = useText();
  const proof = (
    <p className={isProved ? styles.proved : styles.soft} role="status">
      {isProved && <Icon name="check" />}
      <span>{t(isProved ? 'walk:tag.proved' : 'walk:tag.fix')}</span>
    </p>
  );
  switch (content.kind) {
    case 'status':
      return (
        <div className={styles.after}>
          <h1 className={styles.title}>
            {t('walk:tag.due')}
            <strong className={styles.date}>{dateText(content.dueOn)}</strong>
          </h1>
          {proof}
        </div>
      );
    case 'quarantine':
      return (
        <div className={styles.after}>
          <h1 className={styles.remove}>
            <Icon name="stop" /> {t('walk:tag.removedTitle')}
          </h1>
          <p className={styles.place}>{t('walk:tag.removedPlace', { place: inLanguage(content.keptAt) })}</p>
          <p>{t('walk:tag.removedFix')}</p>
          {proof}
          <h2 className={styles.before}>{t('walk:tag.beforeReturn')}</h2>
          <ul className={styles.list}>
            {content.beforeReturn.map((line) => (
              <li key={line.en}>{inLanguage(line)}</li>
            ))}
          </ul>
        </div>
      );
    case 'id':
      return (
        <div className={styles.after}>
          <h1>{t('walk:tag.id')}</h1>
          {proof}
        </div>
      );
  }
};
