/** One of a few, all of them in sight: large tiles that are radio buttons, picked from the command sheet where they are numbered. */
import { Label, Radio, RadioGroup } from 'react-aria-components';
import { classes } from '../design/classes.ts';
import { useScanHandler } from '../scan/scan.ts';
import styles from './choice.module.css';
import { NumberMark } from './number-mark.tsx';

export interface ChoiceProps<Value extends string> {
  readonly label: string;
  readonly isLabelHidden?: boolean;
  readonly value: Value | undefined;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  onChange(value: Value): void;
  readonly isCompact?: boolean;
  /** The digit of the first of them; without it none has one. */
  readonly firstNumber?: number;
}

export const Choice = <Value extends string>({
  label,
  isLabelHidden = false,
  value,
  options,
  onChange,
  isCompact = false,
  firstNumber,
}: ChoiceProps<Value>) => {
  const numberAt = (index: number): number | undefined =>
    firstNumber === undefined || firstNumber + index > 9 ? undefined : firstNumber + index;
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command') return false;
    const chosen = options.find((_, index) => String(numberAt(index)) === meaning.command);
    if (chosen !== undefined) onChange(chosen.value);
    return chosen !== undefined;
  });
  return (
    <RadioGroup
      className={styles.group ?? ''}
      value={value ?? null}
      orientation="horizontal"
      onChange={(chosen) => {
        const option = options.find((candidate) => candidate.value === chosen);
        if (option !== undefined) onChange(option.value);
      }}
      {...(isLabelHidden ? { 'aria-label': label } : {})}
    >
      {isLabelHidden ? null : <Label className={styles.label ?? ''}>{label}</Label>}
      <div className={styles.tiles}>
        {options.map((option, index) => (
          <Radio
            key={option.value}
            value={option.value}
            className={classes(styles.tile, isCompact && styles.compact)}
          >
            <NumberMark number={numberAt(index)} />
            <span className={styles.dot} aria-hidden="true" />
            <span>{option.label}</span>
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
};
