/** That nothing but two people's word says that this is the device; nothing where its marking says it. */
import type { DeviceCard } from '../../../src/station/views.ts';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import styles from './presumed-identity.module.css';

export const PresumedIdentity = ({ device }: { readonly device: DeviceCard }) => {
  const { t, dateText } = useText();
  const { presumedIdentity } = device;
  if (presumedIdentity === undefined) return null;
  const { identityCase, proposedBy, confirmedBy, on } = presumedIdentity;
  return (
    <div className={styles.presumed}>
      <Icon name="blank" />
      <p>
        <strong>{t('screens:identity.presumed')}.</strong>{' '}
        {t('screens:identity.presumedText', {
          identityCase,
          first: proposedBy,
          second: confirmedBy,
          date: dateText(on),
        })}
      </p>
      <Button onPress={() => navigate({ screen: 'who', identityCase })}>
        {t('screens:identity.presumedOpen')}
      </Button>
    </div>
  );
};
