/** What to do first at a station without a device. */
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import styles from './start.module.css';

export const EmptyRegister = () => {
  const { t } = useText();
  return (
    <section className={styles.section} aria-labelledby="empty-register">
      <h2 id="empty-register">{t('screens:start.firstTitle')}</h2>
      <p>{t('screens:start.firstText')}</p>
      <div>
        <Button look="primary" icon="plus" onPress={() => navigate({ screen: 'new-device' })}>
          {t('screens:register.add')}
        </Button>
      </div>
    </section>
  );
};
