/** What happens to the device now: back into use until its due date, or locked away. */
import type { TagContent } from '../../../src/domain/tag-content.ts';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './after-tag.module.css';

/** What was scanned off the device here: nothing yet, its bench ID alone, or the tag with its number. */
export type TagProof = 'none' | 'bench ID' | 'tag';

const proofWords = { none: 'walk:tag.fix', 'bench ID': 'walk:tag.provedId', tag: 'walk:tag.proved' } as const;

export interface AfterTagProps {
  readonly content: TagContent;
  readonly proof: TagProof;
}

export const AfterTag = ({ content, proof: scanned }: AfterTagProps) => {
  const { t, dateText, inLanguage } = useText();
  const proof = (
    <p className={scanned === 'none' ? styles.soft : styles.proved} role="status">
      {scanned !== 'none' && <Icon name="check" />}
      <span>{t(proofWords[scanned])}</span>
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
