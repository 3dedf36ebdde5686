/** Step three of registering: the codes on the device, its bench ID label, its regular user. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { CallError } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { SelectInput } from '../../components/select-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useMarkingWords } from '../../scan/use-marking-words.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './new-device.module.css';
import type { ScannedCode } from './scanned-codes.ts';

export interface CodesStepProps {
  readonly codes: readonly ScannedCode[];
  onTakeOff(code: string): void;
  readonly label: BenchId | undefined;
  onLabel(label: BenchId | undefined): void;
  /** Empty for nobody in particular. */
  readonly regularUserId: string;
  onRegularUser(personId: string): void;
  readonly error: CallError | undefined;
  readonly isRunning: boolean;
  onBack(): void;
  onRegister(): void;
}

export const CodesStep = (props: CodesStepProps) => {
  const {
    codes,
    onTakeOff,
    label,
    onLabel,
    regularUserId,
    onRegularUser,
    error,
    isRunning,
    onBack,
    onRegister,
  } = props;
  const { t } = useText();
  const wordsOf = useMarkingWords();
  const people = useStationQuery('person.list', {});

  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command') return false;
    if (meaning.command === 'confirm' && !isRunning) onRegister();
    else if (meaning.command === 'back') onBack();
    else return false;
    return true;
  });

  const users = [
    { value: '', label: t('screens:newDevice.nobody') },
    ...(people.data?.people ?? [])
      .filter(({ left }) => left === undefined)
      .map(({ personId, name }) => ({ value: personId, label: name })),
  ];
  return (
    <div className={styles.step}>
      <div className={styles.columns}>
        <section className={styles.section} aria-labelledby="new-label">
          <h2 id="new-label">{t('screens:newDevice.label')}</h2>
          {label === undefined ? (
            <>
              <p>{t('screens:newDevice.labelNew')}</p>
              <p>{t('screens:newDevice.labelHint')}</p>
            </>
          ) : (
            <>
              <p className={styles.large}>
                {t('screens:newDevice.labelTaken', { benchId: formatBenchId(label) })}
              </p>
              <Button onPress={() => onLabel(undefined)}>{t('screens:newDevice.labelDrop')}</Button>
            </>
          )}
        </section>
        <section className={styles.section} aria-labelledby="new-codes">
          <h2 id="new-codes">{t('screens:newDevice.codes')}</h2>
          <p>{t('screens:newDevice.codesHint')}</p>
          <ul className={styles.codes}>
            {codes.map(({ code, data }) => (
              <li key={code}>
                <span>
                  <span className={styles.code}>{code}</span>
                  {data === undefined ? null : (
                    <span className={styles.says}>{wordsOf(data.identification)}</span>
                  )}
                </span>
                <Button
                  look="quiet"
                  icon="cross"
                  label={t('screens:newDevice.takeOff', { code })}
                  onPress={() => onTakeOff(code)}
                >
                  {''}
                </Button>
              </li>
            ))}
          </ul>
        </section>
        <section className={styles.section} aria-label={t('screens:newDevice.regularUser')}>
          <SelectInput
            label={t('screens:newDevice.regularUser')}
            value={regularUserId}
            options={users}
            onChange={onRegularUser}
          />
        </section>
      </div>
      <AlertLine sentence={error?.sentence} />
      <div className={styles.actions}>
        <Button onPress={onBack}>{t('screens:newDevice.back')}</Button>
        <Button look="primary" size="large" icon="check" isRunning={isRunning} onPress={onRegister}>
          {t('screens:newDevice.register')}
        </Button>
      </div>
    </div>
  );
};
