/** A designation that a person holds or held, with its document, training and scope. */
import type { HeldDesignation } from '../../../src/domain/competence.ts';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './people.module.css';

export const DesignationBox = ({ held }: { readonly held: HeldDesignation }) => {
  const { t, dateText } = useText();
  const { designation, recorded, ended } = held;
  const { data } = useStationQuery('model-sheet.list', {});
  const nameOf = (id: string): string => {
    const sheet = data?.modelSheets.find(({ modelSheetId }) => modelSheetId === id);
    return sheet === undefined ? id : `${sheet.manufacturer} ${sheet.model}`;
  };
  const training = (): string => {
    const course = designation.trainingCourse ?? t('people:designation.noCourse');
    return designation.trainedOn === undefined
      ? course
      : t('people:designation.trainedOn', { course, date: dateText(designation.trainedOn) });
  };
  const facts: readonly (readonly [label: string, value: string])[] = [
    [t('people:designation.by'), designation.designatedBy],
    [t('people:designation.on'), dateText(designation.designatedOn)],
    [t('people:designation.document'), designation.document ?? t('people:designation.noDocument')],
    [t('people:designation.training'), training()],
    [t('people:designation.valid'), dateText(designation.trainingValidUntil)],
    [
      t('people:designation.scope'),
      designation.scope?.map(nameOf).join(', ') ?? t('people:designation.every'),
    ],
  ];
  return (
    <article className={styles.box}>
      <p className={styles.name}>
        {ended === undefined
          ? t('people:designation.now')
          : t(`people:designation.${ended.how}`, {
              date: dateText(ended.on),
              name: ended.by,
              because: ended.because ?? '',
            })}
      </p>
      <dl>
        {facts.map(([label, value]) => (
          <div key={label} className={styles.fact}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {recorded === undefined ? null : (
        <p className={styles.soft}>
          {t('people:designation.recorded', { date: dateText(recorded.on), name: recorded.by })}
        </p>
      )}
    </article>
  );
};
