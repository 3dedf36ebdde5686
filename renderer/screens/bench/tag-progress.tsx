/** How far a tag has come: to be printed, to be scanned on the device, or applied. */
import type { CurrentTag } from '../../../src/domain/device.ts';
import { Icon } from '../../components/icon.tsx';
import { classes } from '../../design/classes.ts';
import { useText } from '../../i18n/text.ts';
import styles from './after-tag.module.css';

/** What was scanned off the device on this screen: nothing yet, its bench ID alone, or what the screen is about. */
export type Scanned = 'none' | 'bench ID' | 'tag';

export interface TagProgressProps {
  /** As the record has it; absent for an ID label, which is not on record. */
  readonly tag: CurrentTag | undefined;
  readonly scanned: Scanned;
}

export const TagProgress = ({ tag, scanned }: TagProgressProps) => {
  const { t, dateText } = useText();
  if (tag?.provedOn !== undefined) {
    return (
      <div className={styles.proved} role="status">
        <Icon name="check" />
        <div>
          {scanned === 'tag' && <p>{t('walk:tag.proved')}</p>}
          <p>{t('walk:tag.appliedOn', { date: dateText(tag.provedOn), number: tag.tagNumber })}</p>
        </div>
      </div>
    );
  }
  if (scanned !== 'none') {
    return (
      <p className={styles.proved} role="status">
        <Icon name="check" />
        <span>{t(scanned === 'tag' ? 'walk:tag.proved' : 'walk:tag.provedId')}</span>
      </p>
    );
  }
  const isOut = tag !== undefined && tag.printed > 0;
  return (
    <p className={classes(isOut ? styles.fix : styles.soft)} role="status">
      {isOut && <Icon name="scan" large />}
      <span>{t(isOut ? 'walk:tag.fix' : 'walk:tag.toPrint')}</span>
    </p>
  );
};
