/** A PIN, typed, touched or scanned digit by digit, under what it is the signature of. */
import { type FormEvent, type ReactNode, useState } from 'react';
import type { CommandName } from '../../../src/domain/command-symbol.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useFocusWithin } from '../../navigation/use-focus-within.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { Keypad } from '../bench/keypad.tsx';
import { pinAfter } from '../bench/pin-entry.ts';
import styles from './who.module.css';

export interface SignatureProps {
  /** Who signs, and what they say by it. */
  readonly name: string;
  readonly statement: string;
  readonly isRunning: boolean;
  readonly error: string | undefined;
  /** What belongs to the statement besides, between it and the PIN. */
  readonly children?: ReactNode;
  onSign(pin: string): Promise<unknown>;
  onBack(): void;
}

export const Signature = ({
  name,
  statement,
  isRunning,
  error,
  children,
  onSign,
  onBack,
}: SignatureProps) => {
  const { t } = useText();
  const [pin, setPin] = useState('');
  const form = useFocusWithin<HTMLFormElement>('input');

  const sign = async (): Promise<void> => {
    if (isRunning || pin === '') return;
    await onSign(pin);
    setPin('');
  };
  const take = (command: CommandName): boolean => {
    if (command === 'confirm') void sign();
    else if (command === 'back') onBack();
    else {
      const next = pinAfter(pin, command);
      if (next === undefined) return false;
      setPin(next);
    }
    return true;
  };
  useScanHandler(({ meaning }) => meaning.meaning === 'command' && take(meaning.command));
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    void sign();
  };
  return (
    <form ref={form} className={styles.sign} onSubmit={submit}>
      <h2>{t('walk:sign.as', { name })}</h2>
      <AlertLine sentence={error} />
      <p>{statement}</p>
      {children}
      <TextInput
        label={t('walk:sign.pin')}
        type="password"
        inputMode="numeric"
        value={pin}
        onChange={(text) => setPin(text.replaceAll(/\D/g, ''))}
      />
      <Keypad shape="flat" onCommand={take} />
      <div className={styles.actions}>
        <Button onPress={onBack}>{t('screens:identity.back')}</Button>
        <Button type="submit" look="primary" isDisabled={pin === '' && !isRunning} isRunning={isRunning}>
          {t('screens:identity.sign')}
        </Button>
      </div>
    </form>
  );
};
