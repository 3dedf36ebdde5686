/** An inspection as it stands: still under way, signed, or broken off. */
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './inspection-screen.module.css';
import { VerdictPage } from './verdict-page.tsx';
import { Walk } from './walk.tsx';

export const InspectionScreen = ({ number }: { readonly number: number }) => {
  const { t } = useText();
  const shown = useStationQuery('inspection.show', { inspection: number });
  const rules = useStationQuery('procedure.show', { inspection: number });
  const error = shown.error ?? rules.error;
  if (shown.data === undefined || rules.data === undefined) {
    return error === undefined ? <p role="status">{t('walk:loading')}</p> : <StationError error={error} />;
  }
  const { inspection } = shown.data;
  const byKey = new Map(rules.data.procedure.checks.map((check) => [check.key, check]));
  const checks = inspection.checks.flatMap((key) => byKey.get(key) ?? []);
  switch (inspection.state) {
    case 'open':
      return <Walk inspection={inspection} checks={checks} />;
    case 'signed':
      return <VerdictPage inspection={inspection} checks={checks} />;
    case 'abandoned':
      return (
        <section className={styles.ended}>
          <h1>{t('walk:abandoned.title')}</h1>
          <p>{t('walk:abandoned.hint')}</p>
          <Button
            look="primary"
            size="large"
            onPress={() => navigate({ screen: 'device', benchId: inspection.device.benchId })}
          >
            {t('walk:abandoned.device')}
          </Button>
        </section>
      );
  }
};
