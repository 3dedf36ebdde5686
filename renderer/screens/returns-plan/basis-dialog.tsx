/** The dialog in which one part of what returns are planned with is entered. */
import { useStationQuery } from '../../station/hooks.ts';
import { RepairTermsDialog } from '../held/repair-terms-dialog.tsx';
import { LengthDialog } from './length-dialog.tsx';
import { MakerDialog } from './maker-dialog.tsx';
import type { Basis } from './plan-data.tsx';
import { WholeDialog } from './whole-dialog.tsx';

export type BasisEntry =
  | { readonly what: 'plan' }
  | { readonly what: 'maker'; readonly manufacturer: string }
  | { readonly what: 'length'; readonly lengthM: number }
  | { readonly what: 'model'; readonly modelSheetId: string; readonly name: string };

export interface BasisDialogProps {
  readonly entry: BasisEntry;
  readonly basis: Basis;
  onClose(): void;
}

export const BasisDialog = ({ entry, basis, onClose }: BasisDialogProps) => {
  switch (entry.what) {
    case 'plan':
      return <WholeDialog basis={basis} onClose={onClose} />;
    case 'maker':
      return (
        <MakerDialog
          manufacturer={entry.manufacturer}
          terms={basis.makers.find(({ manufacturer }) => manufacturer === entry.manufacturer)?.terms}
          onClose={onClose}
        />
      );
    case 'length': {
      const of = basis.lengths.find(({ lengthM }) => lengthM === entry.lengthM);
      return (
        <LengthDialog
          lengthM={entry.lengthM}
          inService={of?.inService ?? 0}
          plan={of?.plan}
          onClose={onClose}
        />
      );
    }
    case 'model':
      return <ModelDialog modelSheetId={entry.modelSheetId} name={entry.name} onClose={onClose} />;
  }
};

/** Opens once it is known what the manufacturer said before, so that none of it is lost. */
const ModelDialog = ({
  modelSheetId,
  name,
  onClose,
}: {
  readonly modelSheetId: string;
  readonly name: string;
  onClose(): void;
}) => {
  const { data } = useStationQuery('repair-terms.list', {});
  if (data === undefined) return null;
  const known = data.models.find((each) => each.modelSheetId === modelSheetId)?.terms;
  return <RepairTermsDialog modelSheetId={modelSheetId} model={name} known={known} onClose={onClose} />;
};
