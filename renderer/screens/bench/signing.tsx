/** The signature under a verdict: who signs, what it means, and the PIN; or plainly why this person cannot sign. */
import type { InspectionView } from '../../../src/station/views.ts';
import { useReadyStation, useSignedIn } from '../../station/status.ts';
import { PinForm } from './pin-form.tsx';
import { signingFault } from './signing-fault.ts';
import { SigningFaultNote } from './signing-fault-note.tsx';

export const Signing = ({ inspection }: { readonly inspection: InspectionView }) => {
  const station = useReadyStation();
  const person = useSignedIn();
  if (inspection.verdict.kind === 'incomplete') return null;
  const fault = signingFault(inspection, person, station?.today ?? '', inspection.device.modelSheetId);
  if (fault !== undefined || person === undefined)
    return fault === undefined ? null : <SigningFaultNote fault={fault} />;
  return <PinForm inspection={inspection} signer={person} />;
};
