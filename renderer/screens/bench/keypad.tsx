/** Digits for a gloved finger, where there is no keyboard and no scanner at hand. */
import { Button } from 'react-aria-components';
import type { CommandName } from '../../../src/domain/command-symbol.ts';
import { useText } from '../../i18n/text.ts';
import styles from './keypad.module.css';

export interface KeypadProps {
  /** `calculator` has a decimal point; `flat` takes two rows, for a PIN. */
  readonly shape: 'calculator' | 'flat';
  onCommand(command: CommandName): void;
}

const digits = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const;
const flatDigits = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '0'] as const;

export const Keypad = ({ shape, onCommand }: KeypadProps) => {
  const { t, language } = useText();
  const key = (command: CommandName, face: string, label?: string) => (
    <Button
      key={command}
      className={styles.key ?? ''}
      onPress={() => onCommand(command)}
      {...(label === undefined ? {} : { 'aria-label': label })}
    >
      {face}
    </Button>
  );
  const erase = key('erase', '⌫', t('walk:keypad.erase'));
  if (shape === 'flat') {
    return (
      <div className={styles.flat}>
        {flatDigits.map((digit) => key(digit, digit))}
        {erase}
      </div>
    );
  }
  return (
    <div className={styles.keypad}>
      {digits.map((digit) => key(digit, digit))}
      {key('point', language === 'es' ? ',' : '.', t('walk:keypad.point'))}
      {key('0', '0')}
      {erase}
    </div>
  );
};
