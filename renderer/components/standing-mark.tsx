/** The standing of a device: a sign and a word. */
import type { Standing } from '../../src/domain/device.ts';
import { classes } from '../design/classes.ts';
import { useText } from '../i18n/text.ts';
import { Icon, type IconName } from './icon.tsx';
import styles from './mark.module.css';

const signs: Readonly<Record<Standing, IconName>> = {
  new: 'blank',
  'in service': 'check',
  quarantined: 'stop',
  'at manufacturer': 'away',
  scrapped: 'cross',
};

export const StandingMark = ({
  standing,
  isLarge = false,
}: {
  readonly standing: Standing;
  readonly isLarge?: boolean;
}) => {
  const { t } = useText();
  const isOut = standing !== 'new' && standing !== 'in service';
  return (
    <span className={classes(styles.mark, isOut && styles.out, isLarge && styles.large)}>
      <Icon name={signs[standing]} />
      {t(`screens:standing.${standing}`)}
    </span>
  );
};
