/** A button that a gloved finger hits. */
import type { ReactNode } from 'react';
import { Button as AriaButton } from 'react-aria-components';
import { classes } from '../design/classes.ts';
import styles from './button.module.css';
import { Icon, type IconName } from './icon.tsx';
import { NumberMark } from './number-mark.tsx';

export interface ButtonProps {
  readonly children: ReactNode;
  onPress?(): void;
  /** `primary` is the one next action; `remove` takes a device out of service. */
  readonly look?: 'primary' | 'plain' | 'quiet' | 'remove';
  readonly size?: 'normal' | 'large';
  readonly icon?: IconName;
  /** The digit that presses it from the command sheet or the keyboard. */
  readonly number?: number;
  readonly type?: 'button' | 'submit';
  readonly isDisabled?: boolean;
  /** What it started is still under way: it keeps the focus and takes no further press. */
  readonly isRunning?: boolean;
  readonly autoFocus?: boolean;
  readonly isWide?: boolean;
  readonly label?: string;
}

export const Button = ({
  children,
  onPress,
  look = 'plain',
  size = 'normal',
  icon,
  number,
  type = 'button',
  isDisabled = false,
  isRunning = false,
  autoFocus = false,
  isWide = false,
  label,
}: ButtonProps) => (
  <AriaButton
    className={classes(
      styles.button,
      styles[look],
      size === 'large' && styles.large,
      isWide && styles.wide,
      isRunning && styles.running,
    )}
    type={isRunning ? 'button' : type}
    isDisabled={isDisabled}
    autoFocus={autoFocus}
    {...(isRunning ? { 'aria-disabled': true } : {})}
    {...(onPress === undefined || isRunning ? {} : { onPress })}
    {...(label === undefined ? {} : { 'aria-label': label })}
  >
    <NumberMark number={number} />
    {icon === undefined ? null : <Icon name={icon} />}
    <span className={styles.words}>{children}</span>
  </AriaButton>
);
