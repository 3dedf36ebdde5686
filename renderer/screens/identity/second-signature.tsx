/** The second person's PIN, typed, touched or scanned digit by digit, under what they say of the device. */
import { type FormEvent, useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { CommandName } from '../../../src/domain/command-symbol.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useFocusWithin } from '../../navigation/use-focus-within.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { Keypad } from '../bench/keypad.tsx';
import { pinAfter } from '../bench/pin-entry.ts';
import styles from './who.module.css';

export interface SecondSignatureProps {
  readonly identityCase: number;
  readonly candidate: BenchId;
  readonly answer: 'yes' | 'no';
  /** Who signs. */
  readonly name: string;
  onBack(): void;
}

export const SecondSignature = ({ identityCase, candidate, answer, name, onBack }: SecondSignatureProps) => {
  const { t } = useText();
  const [pin, setPin] = useState('');
  const [why, setWhy] = useState('');
  const confirm = useStationCommand('identity.confirm');
  const disagree = useStationCommand('identity.disagree');
  const isRunning = confirm.isRunning || disagree.isRunning;
  const error = confirm.error ?? disagree.error;
  const form = useFocusWithin<HTMLFormElement>('input');
  const benchId = formatBenchId(candidate);

  const sign = async (): Promise<void> => {
    if (isRunning || pin === '') return;
    if (answer === 'yes') await confirm.run({ identityCase, candidate, lookedAtDevice: true, pin });
    else await disagree.run({ identityCase, why: why.trim(), pin });
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
      <AlertLine sentence={error?.sentence} />
      <p>{t(answer === 'yes' ? 'screens:identity.signYes' : 'screens:identity.signNo', { benchId })}</p>
      {answer === 'no' ? <TextInput label={t('screens:identity.why')} value={why} onChange={setWhy} /> : null}
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
        <Button type="submit" look="primary" isDisabled={isRunning || pin === ''}>
          {t('screens:identity.sign')}
        </Button>
      </div>
    </form>
  );
};
