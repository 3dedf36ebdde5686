/** A refusal in the place of what was asked for: the sentence, and where it helps, the badges of the demo to sign in with. */
import type { CallError } from '../../src/station/contract.ts';
import { useText } from '../i18n/text.ts';
import { AlertLine } from './alert-line.tsx';
import { DemoBadges } from './demo-badges.tsx';
import styles from './station-error.module.css';

export const StationError = ({ error }: { readonly error: CallError }) => {
  const { t } = useText();
  const needsBadge = error.code === 'sign-in-needed' || error.code === 'role-needed';
  return (
    <div className={styles.place}>
      <h1>{t(needsBadge ? 'screens:errors.signIn' : 'screens:errors.title')}</h1>
      <AlertLine sentence={error.sentence} />
      {needsBadge ? <DemoBadges /> : null}
    </div>
  );
};
