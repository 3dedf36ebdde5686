/** A statement that is true or not; where it has a number, that digit of the command sheet turns it round. */
import { Checkbox } from 'react-aria-components';
import { useScanHandler } from '../scan/scan.ts';
import styles from './check-box.module.css';
import { NumberMark } from './number-mark.tsx';

export interface CheckBoxProps {
  readonly children: string;
  readonly isSelected: boolean;
  onChange(isSelected: boolean): void;
  readonly number?: number | undefined;
}

export const CheckBox = ({ children, isSelected, onChange, number }: CheckBoxProps) => {
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== String(number)) return false;
    onChange(!isSelected);
    return true;
  });
  return (
    <Checkbox className={styles.line ?? ''} isSelected={isSelected} onChange={onChange}>
      <NumberMark number={number} />
      <svg className={styles.box} viewBox="0 0 24 24" aria-hidden="true">
        <path d="M5 12.5l4.5 4.5L19 7" />
      </svg>
      <span>{children}</span>
    </Checkbox>
  );
};
