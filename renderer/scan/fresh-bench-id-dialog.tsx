/** A sound bench ID that no device of this station has: a fresh label, or a device of another station. */

import { formatBenchId } from '../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../src/domain/brand.ts';
import { Dialog } from '../components/dialog.tsx';
import { NumberedChoices } from '../components/numbered-choices.tsx';
import { useText } from '../i18n/text.ts';
import { navigate } from '../navigation/route.ts';

export interface FreshBenchIdDialogProps {
  readonly benchId: BenchId;
  onClose(): void;
}

export const FreshBenchIdDialog = ({ benchId, onClose }: FreshBenchIdDialogProps) => {
  const { t } = useText();
  const register = (): void => {
    onClose();
    navigate({ screen: 'new-device', benchId });
  };
  return (
    <Dialog title={t('screens:scan.fresh.title')} onClose={onClose}>
      <p>{t('screens:scan.fresh.text', { benchId: formatBenchId(benchId) })}</p>
      <NumberedChoices
        choices={[
          { key: 'register', label: t('screens:scan.fresh.register'), isPrimary: true, onChoose: register },
          { key: 'cancel', label: t('screens:scan.fresh.cancel'), onChoose: onClose },
        ]}
      />
    </Dialog>
  );
};
