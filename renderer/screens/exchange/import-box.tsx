/** Where a fleet list is chosen, or dropped. */
import { type DragEvent, useState } from 'react';
import { classes } from '../../design/classes.ts';
import { useText } from '../../i18n/text.ts';
import { ChooseListButton } from './choose-list-button.tsx';
import styles from './exchange.module.css';

export const ImportBox = ({ onFile }: { onFile(file: File): void }) => {
  const { t } = useText();
  const [isOver, setOver] = useState(false);
  const over = (event: DragEvent): void => {
    if (!event.dataTransfer.types.includes('Files')) return;
    event.preventDefault();
    setOver(true);
  };
  const drop = (event: DragEvent): void => {
    const [file] = event.dataTransfer.files;
    if (file === undefined) return;
    event.preventDefault();
    setOver(false);
    onFile(file);
  };
  return (
    <section
      className={classes(styles.box, isOver && styles.over)}
      aria-labelledby="import"
      onDragOver={over}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <h2 id="import">{t('exchange:importTitle')}</h2>
      <p>{t('exchange:importText')}</p>
      <div className={styles.buttons}>
        <ChooseListButton label={t('exchange:chooseFile')} look="primary" onFile={onFile} />
        <span className={styles.soft}>{t('exchange:orDrop')}</span>
      </div>
    </section>
  );
};
