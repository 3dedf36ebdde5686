/** The label of a place was scanned: what it is, and the devices that may be kept there. */
import { Dialog } from '../components/dialog.tsx';
import { NumberedChoices } from '../components/numbered-choices.tsx';
import { useText } from '../i18n/text.ts';
import { navigate } from '../navigation/route.ts';

export interface PlaceDialogProps {
  readonly code: string;
  onClose(): void;
}

export const PlaceDialog = ({ code, onClose }: PlaceDialogProps) => {
  const { t } = useText();
  const toHeld = (): void => {
    onClose();
    navigate({ screen: 'register', filter: 'held' });
  };
  return (
    <Dialog title={t('screens:scan.place.title', { code })} onClose={onClose}>
      <p>{t('screens:scan.place.text')}</p>
      <NumberedChoices
        choices={[
          { key: 'held', label: t('screens:scan.place.held'), isPrimary: true, onChoose: toHeld },
          { key: 'close', label: t('screens:scan.place.close'), onChoose: onClose },
        ]}
      />
    </Dialog>
  );
};
