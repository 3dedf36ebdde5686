/** Up to nine choices, picked by finger, by digit key, or from the command sheet: by digit, or *confirm* for the primary one. */
import type { ReactNode } from 'react';
import { useScanHandler } from '../scan/scan.ts';
import { Button } from './button.tsx';
import styles from './numbered-choices.module.css';

export interface NumberedChoice {
  readonly key: string;
  readonly label: ReactNode;
  readonly isPrimary?: boolean;
  onChoose(): void;
}

export const NumberedChoices = ({ choices }: { readonly choices: readonly NumberedChoice[] }) => {
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command') return false;
    const chosen =
      meaning.command === 'confirm'
        ? choices.find(({ isPrimary }) => isPrimary)
        : choices[Number(meaning.command) - 1];
    chosen?.onChoose();
    return chosen !== undefined;
  });
  return (
    <ul className={styles.choices}>
      {choices.slice(0, 9).map(({ key, label, isPrimary = false, onChoose }, index) => (
        <li key={key}>
          <Button
            number={index + 1}
            onPress={onChoose}
            isWide
            look={isPrimary ? 'primary' : 'plain'}
            autoFocus={isPrimary}
          >
            {label}
          </Button>
        </li>
      ))}
    </ul>
  );
};
