/** The way to the help that is always in sight. */
import { Button } from '../components/button.tsx';
import { useText } from '../i18n/text.ts';
import { useHelp } from './help.ts';

export const HelpButton = () => {
  const { t } = useText();
  const { open } = useHelp();
  return (
    <Button look="quiet" icon="blank" label={t('help:open')} onPress={open}>
      {''}
    </Button>
  );
};
