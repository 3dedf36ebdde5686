/** None of these: where the device is kept, and the case is closed without touching anything. */
import { type FormEvent, useState } from 'react';
import type { IdentityCaseView } from '../../../src/station/identity-view.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './who.module.css';

export interface NonePageProps {
  readonly identity: IdentityCaseView;
  onBack(): void;
}

export const NonePage = ({ identity, onBack }: NonePageProps) => {
  const { t } = useText();
  const [keptAt, setKeptAt] = useState(identity.keptAt);
  const leave = useStationCommand('identity.leave-unidentified');
  const act = async (): Promise<void> => {
    if (leave.isRunning || keptAt.trim() === '') return;
    await leave.run({ identityCase: identity.identityCase, keptAt: keptAt.trim() });
  };
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command') return false;
    if (meaning.command === 'confirm') void act();
    else if (meaning.command === 'back') onBack();
    else return false;
    return true;
  });
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    void act();
  };
  return (
    <form className={styles.screen} onSubmit={submit}>
      <h1>{t('screens:identity.noneTitle')}</h1>
      <p className={styles.large}>{t('screens:identity.noneText')}</p>
      <div className={styles.typed}>
        <TextInput label={t('screens:identity.keptAt')} value={keptAt} onChange={setKeptAt} autoFocus />
      </div>
      <AlertLine sentence={leave.error?.sentence} />
      <div className={styles.actions}>
        <Button onPress={onBack}>{t('screens:identity.others')}</Button>
        <Button type="submit" look="primary" isDisabled={leave.isRunning || keptAt.trim() === ''}>
          {t('screens:identity.noneClose')}
        </Button>
      </div>
    </form>
  );
};
