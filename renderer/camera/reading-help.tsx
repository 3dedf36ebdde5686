/** What a person can do where nothing is read. */
import { classes } from '../design/classes.ts';
import { useText } from '../i18n/text.ts';
import styles from './camera.module.css';

const helps = ['nearer', 'light', 'wipe', 'flatten'] as const;

export const ReadingHelp = () => {
  const { t } = useText();
  return (
    <div role="status">
      <p className={styles.helpTitle}>{t('camera:help.title')}</p>
      <ul className={classes(styles.helps, styles.columns)}>
        {helps.map((help) => (
          <li key={help}>{t(`camera:help.${help}`)}</li>
        ))}
      </ul>
    </div>
  );
};
