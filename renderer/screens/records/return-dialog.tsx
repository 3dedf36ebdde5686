/** Paperwork for devices that are held: of which manufacturer, which of them, and what is asked. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import { CheckBox } from '../../components/check-box.tsx';
import { Choice } from '../../components/choice.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { SelectInput } from '../../components/select-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './records.module.css';
import { ReportDialog } from './report-dialog.tsx';

type Ask = 'repair' | 'replacement' | 'evidence';

/** As many as one set of papers takes. */
const most = 200;

export const ReturnDialog = ({ onClose }: { onClose(): void }) => {
  const { t } = useText();
  const held = useStationQuery('device.list', { standing: ['quarantined', 'at manufacturer'], limit: most });
  const [maker, setMaker] = useState<string>();
  const [leftOut, setLeftOut] = useState<ReadonlySet<BenchId>>(new Set());
  const [ask, setAsk] = useState<Ask>('evidence');
  const title = t('records:fleet.return');
  const devices = held.data?.devices ?? [];
  const makers = [...new Set(devices.map(({ manufacturer }) => manufacturer))];
  const chosen = maker ?? makers[0];
  if (chosen === undefined) {
    return (
      <Dialog title={title} onClose={onClose}>
        <p>{t(held.data === undefined ? 'screens:app.loading' : 'records:return.none')}</p>
      </Dialog>
    );
  }
  const ofMaker = devices.filter(({ manufacturer }) => manufacturer === chosen);
  const benchIds = ofMaker.map(({ benchId }) => benchId).filter((benchId) => !leftOut.has(benchId));
  const toggle = (benchId: BenchId, isIn: boolean): void => {
    const next = new Set(leftOut);
    if (isIn) next.delete(benchId);
    else next.add(benchId);
    setLeftOut(next);
  };
  return (
    <ReportDialog
      title={title}
      of={benchIds.length === 0 ? undefined : { kind: 'return', benchIds, ask }}
      isList
      onClose={onClose}
    >
      <SelectInput
        label={t('records:return.maker')}
        value={chosen}
        options={makers.map((value) => ({ value, label: value }))}
        onChange={setMaker}
      />
      <fieldset className={styles.devices}>
        <legend>{t('records:return.devices')}</legend>
        {ofMaker.map(({ benchId, model, serial }) => (
          <CheckBox
            key={benchId}
            isSelected={!leftOut.has(benchId)}
            onChange={(isIn) => toggle(benchId, isIn)}
          >
            {`${formatBenchId(benchId)} ${model} ${serial}`}
          </CheckBox>
        ))}
      </fieldset>
      <Choice<Ask>
        label={t('records:return.ask')}
        value={ask}
        options={(['evidence', 'repair', 'replacement'] as const).map((value) => ({
          value,
          label: t(`records:return.asks.${value}`),
        }))}
        onChange={setAsk}
      />
    </ReportDialog>
  );
};
