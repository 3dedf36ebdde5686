/** A statement that is true or not. */
import { Checkbox } from 'react-aria-components';
import styles from './check-box.module.css';

export interface CheckBoxProps {
  readonly children: string;
  readonly isSelected: boolean;
  onChange(isSelected: boolean): void;
}

export const CheckBox = ({ children, isSelected, onChange }: CheckBoxProps) => (
  <Checkbox className={styles.line ?? ''} isSelected={isSelected} onChange={onChange}>
    <svg className={styles.box} viewBox="0 0 24 24" aria-hidden="true">
      <path d="M5 12.5l4.5 4.5L19 7" />
    </svg>
    {children}
  </Checkbox>
);
