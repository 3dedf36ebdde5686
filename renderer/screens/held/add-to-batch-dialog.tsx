/** Puts a held device into a return batch that is being packed for its manufacturer, or into a new one. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { HeldView } from '../../../src/station/held-view.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';

export interface AddToBatchDialogProps {
  readonly device: HeldView['device'];
  onClose(): void;
}

export const AddToBatchDialog = ({ device, onClose }: AddToBatchDialogProps) => {
  const { t } = useText();
  const { benchId, manufacturer } = device;
  const batches = useStationQuery('return-batch.list', { open: true });
  const add = useStationCommand('return-batch.add');
  const put = async (batch?: number): Promise<void> => {
    const result = await add.run({ benchIds: [benchId], ...(batch === undefined ? {} : { batch }) });
    if (!result.ok) return;
    onClose();
    navigate({ screen: 'returns', batch: result.output.batch.number });
  };
  const fitting = (batches.data?.batches ?? []).filter(
    (batch) => batch.phase === 'open' && batch.manufacturer === manufacturer,
  );
  return (
    <Dialog title={t('held:returns.addTitle', { benchId: formatBenchId(benchId) })} onClose={onClose}>
      <AlertLine sentence={add.error?.sentence} />
      <NumberedChoices
        choices={[
          ...fitting.slice(0, 8).map(({ number, devices }) => ({
            key: String(number),
            label: `${t('held:returns.batch', { number, manufacturer })}, ${t('held:returns.devices', {
              count: devices.length,
            })}`,
            onChoose: () => void put(number),
          })),
          {
            key: 'new',
            label: t('held:returns.newBatch', { manufacturer }),
            isPrimary: fitting.length === 0,
            onChoose: () => void put(),
          },
        ]}
      />
    </Dialog>
  );
};
