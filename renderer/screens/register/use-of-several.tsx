/** The type of use of several devices at once: they are chosen in the register, then a competent person determines it. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useSignedIn } from '../../station/status.ts';
import { UseDialog } from '../device/use-dialog.tsx';
import type { ChoiceOfDevices } from './choice-of-devices.ts';
import styles from './register.module.css';

export interface UseOfSeveralProps {
  readonly choice: ChoiceOfDevices;
  /** How many the list shows; all of them can be chosen at once while they are not too many. */
  readonly total: number;
  /** Those, by bench ID. */
  allShown(): Promise<readonly BenchId[]>;
}

/** What the station takes in one call. */
export const mostAtOnce = 500;

export const UseOfSeveral = ({ choice, total, allShown }: UseOfSeveralProps) => {
  const { t } = useText();
  const { chosen } = choice;
  const [isAsking, setAsking] = useState(false);
  const mayDetermine = useSignedIn()?.maySign === true;
  const isAskable = chosen !== undefined && chosen.length > 0 && chosen.length <= mostAtOnce;
  useScanHandler(({ meaning }) => {
    if (chosen === undefined || meaning.meaning !== 'command') return false;
    if (meaning.command === 'confirm' && isAskable) setAsking(true);
    else if (meaning.command === 'cancel') choice.end();
    else return false;
    return true;
  });
  if (!mayDetermine) return null;
  if (chosen === undefined) return <Button onPress={choice.begin}>{t('program:typeOfUse.several')}</Button>;
  const end = (): void => {
    setAsking(false);
    choice.end();
  };
  return (
    <div className={styles.choosing}>
      <p role="status">
        <strong>{t('program:typeOfUse.chosen', { count: chosen.length })}</strong>{' '}
        {t('program:typeOfUse.choose')}
      </p>
      <Button onPress={choice.end}>{t('program:typeOfUse.end')}</Button>
      {total > 0 && total <= mostAtOnce && (
        <Button onPress={() => void allShown().then(choice.add)}>
          {t('program:typeOfUse.all', { count: total })}
        </Button>
      )}
      <Button look="primary" icon="forward" isDisabled={!isAskable} onPress={() => setAsking(true)}>
        {t('program:typeOfUse.title')}
      </Button>
      {isAsking && (
        <UseDialog
          title={t('program:typeOfUse.dialogSeveral', { count: chosen.length })}
          benchIds={chosen}
          onClose={() => setAsking(false)}
          onDone={end}
        />
      )}
    </div>
  );
};
