/** The dialog of one step of a held device. */
import type { NextStep } from '../../../src/domain/held/next-step.ts';
import type { HeldView } from '../../../src/station/held-view.ts';
import { AddToBatchDialog } from './add-to-batch-dialog.tsx';
import { AgreeDialog } from './agree-dialog.tsx';
import { CloseCaseDialog } from './close-case-dialog.tsx';
import { EvidenceDialog } from './evidence-dialog.tsx';
import { FallFactsDialog } from './fall-facts-dialog.tsx';
import { ReleaseDialog } from './release-dialog.tsx';
import { ScrapDialog } from './scrap-dialog.tsx';

export type HeldAct = NextStep | 'note fall case' | 'add to batch';

export interface HeldDialogProps {
  readonly act: HeldAct;
  readonly held: HeldView;
  onClose(): void;
}

export const HeldDialog = ({ act, held, onClose }: HeldDialogProps) => {
  switch (act) {
    case 'get evidence':
      return <EvidenceDialog held={held} onClose={onClose} />;
    case 'agree to evidence':
      return <AgreeDialog held={held} onClose={onClose} />;
    case 'open fall case':
      return <FallFactsDialog benchId={held.device.benchId} onClose={onClose} />;
    case 'note fall case':
      return <FallFactsDialog benchId={held.device.benchId} file={held.fallCase} onClose={onClose} />;
    case 'close fall case':
      return held.fallCase === undefined ? null : <CloseCaseDialog file={held.fallCase} onClose={onClose} />;
    case 'scan tag back':
      return <ReleaseDialog benchId={held.device.benchId} onClose={onClose} />;
    case 'scrap':
      return <ScrapDialog benchId={held.device.benchId} onClose={onClose} />;
    case 'add to batch':
      return <AddToBatchDialog device={held.device} onClose={onClose} />;
    default:
      return null;
  }
};
