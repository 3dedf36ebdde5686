/** Each fact as it was seen and as the register has it, with its weight: a bar to the right speaks for, to the left against. */
import type { ObservedField } from '../../../src/domain/identity/observation.ts';
import type { CandidateView, IdentityCaseView } from '../../../src/station/identity-view.ts';
import { classes } from '../../design/classes.ts';
import { useText } from '../../i18n/text.ts';
import { useFactWords } from './use-fact-words.ts';
import styles from './who.module.css';

export interface EvidenceTableProps {
  readonly identity: IdentityCaseView;
  readonly candidate: CandidateView;
}

export const EvidenceTable = ({ identity, candidate }: EvidenceTableProps) => {
  const { t } = useText();
  const words = useFactWords();
  const { startWeight } = identity.ranking;
  const rows = [
    { key: 'start', name: t('screens:identity.start'), seen: '', there: '', weight: startWeight },
    ...candidate.evidence.map(({ field, weight }: { field: ObservedField; weight: number }) => {
      const there = words.registered(candidate, field);
      return {
        key: field,
        name: t(`screens:identity.field.${field}`),
        seen: words.seen(identity.observation, field, identity.lastUser),
        there: there === '' ? t('screens:identity.unknownThere') : there,
        weight,
      };
    }),
    { key: 'total', name: t('screens:identity.total'), seen: '', there: '', weight: candidate.weight },
  ];
  const scale = Math.max(8, ...rows.map(({ weight }) => Math.abs(weight)));
  return (
    <table className={styles.evidence}>
      <thead>
        <tr>
          <th scope="col">{t('screens:identity.evidence')}</th>
          <th scope="col">{t('screens:identity.seen')}</th>
          <th scope="col">{t('screens:identity.inRegister')}</th>
          <th scope="col" colSpan={2} className={styles.scaleNote}>
            {t('screens:identity.evidenceHint')}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ key, name, seen, there, weight }) => (
          <tr key={key} className={classes(key === 'total' && styles.totalRow)}>
            <th scope="row">{name}</th>
            <td>{seen}</td>
            <td>{there}</td>
            <td className={styles.barCell} aria-hidden="true">
              <span className={styles.axis} />
              <span
                className={classes(styles.bar, weight < 0 && styles.against)}
                style={{
                  inlineSize: `${(Math.abs(weight) / scale) * 50}%`,
                  insetInlineStart: weight < 0 ? `${50 - (Math.abs(weight) / scale) * 50}%` : '50%',
                }}
              />
            </td>
            <td className={styles.number}>
              <Weight weight={weight} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};

const Weight = ({ weight }: { readonly weight: number }) => {
  const { language } = useText();
  const text = `${weight < 0 ? '−' : '+'}${Math.abs(weight).toFixed(1)}`;
  return <>{language === 'es' ? text.replace('.', ',') : text}</>;
};
