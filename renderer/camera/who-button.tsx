/** The way on for a device whose tag cannot be read: who it is, by what can still be seen on it. */
import { Button } from '../components/button.tsx';
import { useText } from '../i18n/text.ts';
import { navigate } from '../navigation/route.ts';

export const WhoButton = ({ onClose }: { onClose(): void }) => {
  const { t } = useText();
  const go = (): void => {
    onClose();
    navigate({ screen: 'who' });
  };
  return <Button onPress={go}>{t('camera:help.who')}</Button>;
};
