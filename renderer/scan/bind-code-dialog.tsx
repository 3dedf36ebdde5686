/** Binds a scanned code to a device: the device is scanned next, then the person confirms. */
import { useState } from 'react';
import { formatBenchId } from '../../src/domain/bench-id/bench-id.ts';
import type { OtherCode } from '../../src/domain/device.ts';
import type { DeviceSummary } from '../../src/station/views.ts';
import { AlertLine } from '../components/alert-line.tsx';
import { Choice } from '../components/choice.tsx';
import { Dialog } from '../components/dialog.tsx';
import { NumberedChoices } from '../components/numbered-choices.tsx';
import { useText } from '../i18n/text.ts';
import { navigate } from '../navigation/route.ts';
import { useStationCommand } from '../station/hooks.ts';
import { shortCode } from './bindable.ts';
import { useScanHandler } from './scan.ts';

export const codeKinds: readonly OtherCode['kind'][] = ['maker', 'rfid', 'old tag', 'other'];

export interface BindCodeDialogProps {
  readonly code: string;
  onClose(): void;
}

export const BindCodeDialog = ({ code, onClose }: BindCodeDialogProps) => {
  const { t } = useText();
  const [device, setDevice] = useState<DeviceSummary>();
  const [kind, setKind] = useState<OtherCode['kind']>('maker');
  const bindCode = useStationCommand('device.bind-code');

  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'device') return false;
    setDevice(meaning.device);
    return true;
  });

  const bind = async (): Promise<void> => {
    if (device === undefined) return;
    const result = await bindCode.run({ benchId: device.benchId, otherCode: { code, kind } });
    if (!result.ok) return;
    onClose();
    navigate({ screen: 'device', benchId: device.benchId });
  };

  return (
    <Dialog title={t('screens:scan.bind.title', { code: shortCode(code) })} onClose={onClose}>
      {device === undefined ? (
        <>
          <p>{t('screens:scan.bind.ask')}</p>
          <NumberedChoices
            choices={[{ key: 'cancel', label: t('screens:scan.bind.cancel'), onChoose: onClose }]}
          />
        </>
      ) : (
        <>
          <p>
            {t('screens:scan.bind.confirm', {
              benchId: formatBenchId(device.benchId),
              device: `${device.manufacturer} ${device.model} ${device.serial}`,
            })}
          </p>
          <Choice<OtherCode['kind']>
            label={t('screens:scan.bind.kind')}
            value={kind}
            options={codeKinds.map((each) => ({ value: each, label: t(`screens:codeKind.${each}`) }))}
            onChange={setKind}
          />
          <AlertLine sentence={bindCode.error?.sentence} />
          <NumberedChoices
            choices={[
              {
                key: 'bind',
                label: t('screens:scan.bind.yes'),
                isPrimary: true,
                onChoose: () => void bind(),
              },
              { key: 'other', label: t('screens:scan.bind.other'), onChoose: () => setDevice(undefined) },
              { key: 'cancel', label: t('screens:scan.bind.cancel'), onChoose: onClose },
            ]}
          />
        </>
      )}
    </Dialog>
  );
};
