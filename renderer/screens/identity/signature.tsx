/** A PIN, typed, touched or scanned digit by digit, under what it is the signature of. */
import type { ReactNode } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useFocusWithin } from '../../navigation/use-focus-within.ts';
import { Keypad } from '../bench/keypad.tsx';
import { usePin } from '../bench/use-pin.ts';
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
  const form = useFocusWithin<HTMLFormElement>('input');
  const { pin, type, take, submit } = usePin({ isRunning, onSign, onBack });
  return (
    <form ref={form} className={styles.sign} onSubmit={submit}>
      <h2>{t('walk:sign.as', { name })}</h2>
      <AlertLine sentence={error} />
      <p>{statement}</p>
      {children}
      <TextInput label={t('walk:sign.pin')} type="password" inputMode="numeric" value={pin} onChange={type} />
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
