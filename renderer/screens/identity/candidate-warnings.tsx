/** What the register says of a candidate that a person must know before saying that it lies here. */
import type { CandidateView } from '../../../src/station/identity-view.ts';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './who.module.css';

const standingKeys = {
  new: 'isNew',
  'in service': 'inUse',
  quarantined: 'isHeld',
  'at manufacturer': 'isAway',
  scrapped: 'isScrapped',
} as const;

export const CandidateWarnings = ({ candidate }: { readonly candidate: CandidateView }) => {
  const { t, dateText } = useText();
  const { device, inspectedSince, scannedSince, presumedInCase } = candidate;
  const sentences = [
    t(`screens:identity.${standingKeys[device.standing]}`),
    ...(inspectedSince === undefined
      ? []
      : [t('screens:identity.inspectedSince', { date: dateText(inspectedSince) })]),
    ...(scannedSince === undefined
      ? []
      : [t('screens:identity.scannedSince', { date: dateText(scannedSince) })]),
    ...(presumedInCase === undefined
      ? []
      : [t('screens:identity.presumedElsewhere', { identityCase: presumedInCase })]),
  ];
  return (
    <ul className={styles.warnings}>
      {sentences.map((sentence) => (
        <li key={sentence}>
          <Icon name="warning" /> {sentence}
        </li>
      ))}
    </ul>
  );
};
