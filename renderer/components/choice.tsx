/** One of a few, all of them in sight: large tiles that are radio buttons. */
import { Label, Radio, RadioGroup } from 'react-aria-components';
import { classes } from '../design/classes.ts';
import styles from './choice.module.css';

export interface ChoiceProps<Value extends string> {
  readonly label: string;
  readonly isLabelHidden?: boolean;
  readonly value: Value | undefined;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  onChange(value: Value): void;
  readonly isCompact?: boolean;
}

export const Choice = <Value extends string>({
  label,
  isLabelHidden = false,
  value,
  options,
  onChange,
  isCompact = false,
}: ChoiceProps<Value>) => (
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
      {options.map((option) => (
        <Radio
          key={option.value}
          value={option.value}
          className={classes(styles.tile, isCompact && styles.compact)}
        >
          <span className={styles.dot} aria-hidden="true" />
          {option.label}
        </Radio>
      ))}
    </div>
  </RadioGroup>
);
