/** What happens to the device now: back into use until its due date, or locked away; and how far its tag has come. */
import { eitherOf, numberRanges } from '../../../src/domain/listing.ts';
import { hasNumberedReasons, type TagContent } from '../../../src/domain/tag-content.ts';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './after-tag.module.css';
import { TagProgress, type TagProgressProps } from './tag-progress.tsx';

export interface AfterTagProps extends TagProgressProps {
  readonly content: TagContent;
}

export const AfterTag = ({ content, tag, scanned }: AfterTagProps) => {
  const { t, dateText, inLanguage } = useText();
  switch (content.kind) {
    case 'status':
      return (
        <div className={styles.after}>
          <h1 className={styles.title}>
            {t(`program:due.heading.${content.dueFor ?? 'documented inspection'}`)}
            <strong className={styles.date}>{dateText(content.dueOn)}</strong>
          </h1>
          <TagProgress tag={tag} scanned={scanned} />
        </div>
      );
    case 'quarantine': {
      const isNumbered = hasNumberedReasons(content);
      return (
        <div className={styles.after}>
          <h1 className={styles.remove}>
            <Icon name="stop" /> {t('walk:tag.removedTitle')}
          </h1>
          <p className={styles.place}>{t('walk:tag.removedPlace', { place: inLanguage(content.keptAt) })}</p>
          <p>{t('walk:tag.removedFix')}</p>
          <TagProgress tag={tag} scanned={scanned} />
          <h2 className={styles.before}>{t('walk:tag.beforeReturn')}</h2>
          <ul className={styles.list}>
            {content.evidence.map(({ reasons, anyOf }) => (
              <li key={anyOf.map(({ en }) => en).join()}>
                {isNumbered
                  ? `${t('walk:tag.forReasons', { count: reasons.length, numbers: numberRanges(reasons) })} `
                  : null}
                {eitherOf(anyOf.map(inLanguage), t('walk:tag.or'))}
              </li>
            ))}
            {content.beforeReturn.map((line) => (
              <li key={line.en}>{inLanguage(line)}</li>
            ))}
          </ul>
        </div>
      );
    }
    case 'id':
      return (
        <div className={styles.after}>
          <h1>{t('walk:tag.id')}</h1>
          <TagProgress tag={undefined} scanned={scanned} />
        </div>
      );
  }
};
