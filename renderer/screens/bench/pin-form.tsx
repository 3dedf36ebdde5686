/** Takes the PIN, typed, touched or scanned digit by digit, and signs. */
import type { PersonView } from '../../../src/station/person-view.ts';
import type { InspectionView } from '../../../src/station/views.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useFocusWithin } from '../../navigation/use-focus-within.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { KeyCap } from './key-cap.tsx';
import { Keypad } from './keypad.tsx';
import { letterOf } from './shortcut.ts';
import styles from './signing.module.css';
import { usePin } from './use-pin.ts';

export interface PinFormProps {
  readonly inspection: InspectionView;
  readonly signer: PersonView;
}

export const PinForm = ({ inspection, signer }: PinFormProps) => {
  const { t, dateText } = useText();
  const { run, isRunning, error } = useStationCommand('inspection.sign');
  const form = useFocusWithin<HTMLFormElement>('input');
  const { benchId } = inspection.device;
  const { pin, type, take, submit } = usePin({
    isRunning,
    onSign: async (given) => {
      const result = await run({ inspection: inspection.inspection, pin: given });
      if (!result.ok) return;
      const { verdict, reinspection } = result.output.inspection;
      const passed = verdict.kind === 'pass';
      if (passed && reinspection !== undefined) return;
      navigate({ screen: 'tag', benchId, kind: passed ? 'status' : 'quarantine' });
    },
  });
  return (
    <form ref={form} className={styles.form} onSubmit={submit}>
      <h2 className={styles.title}>{t('walk:sign.as', { name: signer.name })}</h2>
      <AlertLine sentence={error?.sentence} />
      {error === undefined && signer.designation !== undefined && (
        <p className={styles.soft}>
          {t('walk:sign.designated', {
            by: signer.designation.designatedBy,
            until: dateText(signer.designation.trainingValidUntil),
          })}
        </p>
      )}
      <p>{t('walk:sign.meaning')}</p>
      <TextInput label={t('walk:sign.pin')} type="password" inputMode="numeric" value={pin} onChange={type} />
      <Keypad shape="flat" onCommand={take} />
      <Button
        type="submit"
        look="primary"
        size="large"
        isWide
        isDisabled={pin === '' && !isRunning}
        isRunning={isRunning}
      >
        <span className={styles.key}>
          {t('walk:sign.sign')} <KeyCap>{letterOf.confirm}</KeyCap>
        </span>
      </Button>
    </form>
  );
};
