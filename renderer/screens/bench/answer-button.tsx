/** One of the large answers of a check. */
import { Button } from 'react-aria-components';
import { Icon, type IconName } from '../../components/icon.tsx';
import { classes } from '../../design/classes.ts';
import styles from './answer-button.module.css';
import { KeyCap } from './key-cap.tsx';

export interface AnswerButtonProps {
  readonly label: string;
  readonly keyName: string | number;
  readonly look: 'good' | 'defect' | 'neutral';
  /** In the place of the sign that the look has. */
  readonly icon?: IconName;
  /** True where this is the answer on record. */
  readonly isGiven: boolean;
  /** True where three stand in a row. */
  readonly isStacked?: boolean;
  readonly isDisabled: boolean;
  onPress(): void;
}

const icons: Readonly<Record<AnswerButtonProps['look'], IconName>> = {
  good: 'check',
  defect: 'warning',
  neutral: 'forward',
};

export const AnswerButton = ({
  label,
  keyName,
  look,
  icon = icons[look],
  isGiven,
  isStacked = false,
  isDisabled,
  onPress,
}: AnswerButtonProps) => (
  <Button
    className={classes(styles.answer, styles[look], isGiven && styles.given, isStacked && styles.stacked)}
    isDisabled={isDisabled}
    onPress={onPress}
    aria-pressed={isGiven}
  >
    <Icon name={icon} large />
    <span className={styles.label}>{label}</span>
    <KeyCap>{keyName}</KeyCap>
  </Button>
);
