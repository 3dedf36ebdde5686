/** The reports over the fleet: register, due list, and the paperwork of a return. */
import { useState } from 'react';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import styles from './records.module.css';
import { ReportDialog } from './report-dialog.tsx';
import { ReturnDialog } from './return-dialog.tsx';

type Open = 'register' | 'due' | 'return';

export const FleetReports = () => {
  const { t } = useText();
  const [open, setOpen] = useState<Open>();
  const close = (): void => setOpen(undefined);
  return (
    <div className={styles.buttons}>
      {(['register', 'due', 'return'] as const).map((name) => (
        <Button key={name} icon="register" onPress={() => setOpen(name)}>
          {t(`records:fleet.${name}`)}
        </Button>
      ))}
      <Button icon="measure" onPress={() => navigate({ screen: 'insight' })}>
        {t('insight:title')}
      </Button>
      {open === 'register' || open === 'due' ? (
        <ReportDialog title={t(`records:fleet.${open}`)} of={{ kind: open }} isList onClose={close} />
      ) : null}
      {open === 'return' ? <ReturnDialog onClose={close} /> : null}
    </div>
  );
};
