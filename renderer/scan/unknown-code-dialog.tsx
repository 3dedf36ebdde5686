/** A code that this station does not know: register a device with it, bind it to one, or nothing. */
import { Dialog } from '../components/dialog.tsx';
import { NumberedChoices } from '../components/numbered-choices.tsx';
import { useText } from '../i18n/text.ts';
import { navigate } from '../navigation/route.ts';

export interface UnknownCodeDialogProps {
  readonly code: string;
  onBind(): void;
  onClose(): void;
}

export const UnknownCodeDialog = ({ code, onBind, onClose }: UnknownCodeDialogProps) => {
  const { t } = useText();
  const register = (): void => {
    onClose();
    navigate({ screen: 'new-device', code });
  };
  const who = (): void => {
    onClose();
    navigate({ screen: 'who' });
  };
  return (
    <Dialog title={t('screens:scan.unknown.title')} onClose={onClose}>
      <p>{t('screens:scan.unknown.text', { code })}</p>
      <NumberedChoices
        choices={[
          { key: 'register', label: t('screens:scan.unknown.register'), isPrimary: true, onChoose: register },
          { key: 'bind', label: t('screens:scan.unknown.bind'), onChoose: onBind },
          { key: 'who', label: t('screens:scan.unknown.who'), onChoose: who },
          { key: 'cancel', label: t('screens:scan.unknown.cancel'), onChoose: onClose },
        ]}
      />
    </Dialog>
  );
};
