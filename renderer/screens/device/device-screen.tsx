/** The device card: which device this is, how it stands, and the one thing to do with it now. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { MarkingData } from '../../../src/domain/marking-data.ts';
import { StationError } from '../../components/station-error.tsx';
import { SrlDrawing } from '../../drawing/srl-drawing.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { CustodyHistory } from '../desk/custody-history.tsx';
import { BindHereDialog } from './bind-here-dialog.tsx';
import { BlindDevice } from './blind-device.tsx';
import styles from './device.module.css';
import { DeviceCorrections } from './device-corrections.tsx';
import { DeviceDue } from './device-due.tsx';
import { DeviceHistory } from './device-history.tsx';
import { DeviceIdentity } from './device-identity.tsx';
import { DeviceLifeline } from './device-lifeline.tsx';
import { DeviceMarking } from './device-marking.tsx';
import { DevicePictures } from './device-pictures.tsx';
import { DeviceTag } from './device-tag.tsx';
import { EquipmentRecord } from './equipment-record.tsx';
import { FreshStill } from './fresh-still.tsx';
import { NextAction } from './next-action.tsx';
import { OtherCodes } from './other-codes.tsx';
import { RemoveDialog } from './remove-dialog.tsx';

export const DeviceScreen = ({ benchId }: { readonly benchId: BenchId }) => {
  const { t, lengthText } = useText();
  const { data, error } = useStationQuery('device.show', { benchId });
  const [isRemoving, setRemoving] = useState(false);
  const [codeToBind, setCodeToBind] = useState<{
    readonly code: string;
    readonly data?: MarkingData | undefined;
  }>();

  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'unknown' || data === undefined || data.device.standing === 'scrapped')
      return false;
    setCodeToBind({ code: meaning.text, data: meaning.data });
    return true;
  });

  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  const { device } = data;
  if (device.isBlind) return <BlindDevice device={device} />;
  return (
    <div className={styles.screen}>
      <div className={styles.top}>
        <div className={styles.main}>
          <DeviceIdentity device={device} />
          <NextAction device={device} onRemove={() => setRemoving(true)} />
        </div>
        <div className={styles.drawing}>
          <SrlDrawing
            facts={{
              ratedLength: lengthText(device.ratedLengthM),
              loadIndicatorFitted: device.modelSheet.loadIndicatorFitted,
            }}
          />
        </div>
      </div>
      <FreshStill benchId={benchId} />
      <div className={styles.details}>
        <DeviceDue device={device} />
        <DeviceTag device={device} />
        <DeviceHistory inspections={device.inspections} declared={device.declaredInspections} />
        <DeviceMarking marking={device.marking} />
        <div className={styles.stack}>
          <EquipmentRecord device={device} />
          <CustodyHistory of={{ benchId }} />
          <OtherCodes device={device} />
          <DeviceLifeline benchId={benchId} />
          <DeviceCorrections device={device} />
          <DevicePictures benchId={benchId} />
        </div>
      </div>
      {isRemoving ? <RemoveDialog benchId={benchId} onClose={() => setRemoving(false)} /> : null}
      {codeToBind === undefined ? null : (
        <BindHereDialog benchId={benchId} {...codeToBind} onClose={() => setCodeToBind(undefined)} />
      )}
    </div>
  );
};
