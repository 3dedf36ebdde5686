/** What an inspection saw along the lifeline and in pictures, one step away from its verdict; nothing where it saw nothing. */
import { useState } from 'react';
import type { Check } from '../../../src/domain/procedure.ts';
import type { InspectionView } from '../../../src/station/views.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './inspection-evidence.module.css';
import { InspectionLifeline } from './inspection-lifeline.tsx';
import { InspectionPictures } from './inspection-pictures.tsx';
import { KeyCap } from './key-cap.tsx';
import { letterOf } from './shortcut.ts';

export interface InspectionEvidenceProps {
  readonly inspection: InspectionView;
  readonly checks: readonly Check[];
}

export const InspectionEvidence = ({ inspection, checks }: InspectionEvidenceProps) => {
  const { t } = useText();
  const [isOpen, setOpen] = useState(false);
  const lifeline = useStationQuery('lifeline.show', { benchId: inspection.device.benchId });
  const pictures = useStationQuery('inspection.pictures', { inspection: inspection.inspection });
  const error = lifeline.error ?? pictures.error;
  const own = lifeline.data?.inspections.find((each) => each.inspection === inspection.inspection);
  const marks = own === undefined ? 0 : own.findings.length + own.readings.length;
  const taken = pictures.data?.pictures ?? [];
  const hasAny = marks + taken.length > 0;

  useScanHandler(({ meaning }) => {
    if (!hasAny || meaning.meaning !== 'command' || meaning.command !== 'picture') return false;
    setOpen(true);
    return true;
  });

  if (!hasAny) return <AlertLine sentence={error?.sentence} />;
  return (
    <div className={styles.at}>
      <Button icon="picture" onPress={() => setOpen(true)}>
        <span className={styles.key}>
          {t(taken.length === 0 ? 'evidence:seen.lifeline' : 'evidence:seen.show', { count: taken.length })}{' '}
          <KeyCap>{letterOf.picture}</KeyCap>
        </span>
      </Button>
      {isOpen && (
        <Dialog
          title={t('evidence:seen.title', { inspection: inspection.inspection })}
          isWide
          onClose={() => setOpen(false)}
        >
          {lifeline.data !== undefined && marks > 0 && (
            <InspectionLifeline lifeline={lifeline.data} inspection={inspection} />
          )}
          <InspectionPictures pictures={taken} checks={checks} />
          <div className={styles.close}>
            <Button autoFocus onPress={() => setOpen(false)}>
              {t('camera:pictures.close')}
            </Button>
          </div>
        </Dialog>
      )}
    </div>
  );
};
