/** A code that is unknown, scanned while a device is on the screen: does it belong to that device? */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { OtherCode } from '../../../src/domain/device.ts';
import type { MarkingData } from '../../../src/domain/marking-data.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Choice } from '../../components/choice.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { codeKinds } from '../../scan/bind-code-dialog.tsx';
import { isBindable, shortCode } from '../../scan/bindable.ts';
import { MarkingDataLines } from '../../scan/marking-data-lines.tsx';
import { useStationCommand } from '../../station/hooks.ts';

export interface BindHereDialogProps {
  readonly benchId: BenchId;
  readonly code: string;
  readonly data?: MarkingData | undefined;
  onClose(): void;
}

export const BindHereDialog = ({ benchId, code, data, onClose }: BindHereDialogProps) => {
  const { t } = useText();
  const [kind, setKind] = useState<OtherCode['kind']>('maker');
  const bindCode = useStationCommand('device.bind-code');
  const bindable = isBindable(code, data);
  const bind = async (): Promise<void> => {
    const result = await bindCode.run({ benchId, otherCode: { code, kind } });
    if (result.ok) onClose();
  };
  return (
    <Dialog title={t('screens:device.bindTitle', { benchId: formatBenchId(benchId) })} onClose={onClose}>
      <p>{t('screens:scan.unknown.text', { code: shortCode(code) })}</p>
      <MarkingDataLines data={data} />
      {bindable ? (
        <Choice<OtherCode['kind']>
          label={t('screens:scan.bind.kind')}
          value={kind}
          options={codeKinds.map((each) => ({ value: each, label: t(`screens:codeKind.${each}`) }))}
          onChange={setKind}
        />
      ) : null}
      <AlertLine sentence={bindCode.error?.sentence} />
      <NumberedChoices
        choices={[
          ...(bindable
            ? [
                {
                  key: 'bind',
                  label: t('screens:device.bindYes'),
                  isPrimary: true,
                  onChoose: () => void bind(),
                },
              ]
            : []),
          {
            key: 'new',
            label: t('screens:device.bindNew'),
            onChoose: () => navigate({ screen: 'new-device', code }),
          },
          { key: 'cancel', label: t('screens:device.bindNo'), onChoose: onClose },
        ]}
      />
    </Dialog>
  );
};
