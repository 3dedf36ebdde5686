/** The bench ID, large, and what stands on the device. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { DeviceCard } from '../../../src/station/views.ts';
import { DueMark } from '../../components/due-mark.tsx';
import { StandingMark } from '../../components/standing-mark.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './device-identity.module.css';
import { PresumedIdentity } from './presumed-identity.tsx';

export const DeviceIdentity = ({ device }: { readonly device: DeviceCard }) => {
  const { t, lengthText, dateText, language } = useText();
  const { modelSheet } = device;
  const diameter = String(modelSheet.lifelineDiameterMm);
  const unreadable = t('screens:device.unreadable');
  const isDateRead = device.marking.every(
    ({ element, state }) => element !== 'dateOfManufacture' || state !== 'not read',
  );
  const unknownDate = isDateRead ? unreadable : t('screens:marking.state.not read');
  const isNamed = device.dueState === 'current' || device.dueWhat !== 'documented inspection';
  const label =
    device.dueWhat === undefined || !isNamed ? undefined : t(`program:due.heading.${device.dueWhat}`);
  const facts: readonly (readonly [string, string])[] = [
    [t('screens:device.serial'), device.serial === '' ? unreadable : device.serial],
    [t('screens:device.length'), lengthText(device.ratedLengthM)],
    [
      t('screens:device.lifeline'),
      t('screens:device.lifelineText', {
        material: t(`screens:material.${device.lifelineMaterial}`),
        diameter: language === 'es' ? diameter.replace('.', ',') : diameter,
      }),
    ],
    [t('screens:device.made'), device.dateOfManufacture === '' ? unknownDate : device.dateOfManufacture],
    [t('screens:device.capacity'), t('screens:device.kilograms', modelSheet.capacityKg)],
    [t('screens:device.standard'), modelSheet.standard],
    [t('screens:device.registered'), dateText(device.registeredOn)],
    ...(device.regularUser === undefined
      ? []
      : [[t('screens:device.regularUser'), device.regularUser] as const]),
    ...(device.custody === undefined
      ? []
      : [[t('desk:cardOut'), `${device.heldBy ?? ''}, ${dateText(device.custody.since.on)}`] as const]),
    ...(device.stored === undefined ? [] : [[t('desk:cardPlace'), device.stored.place] as const]),
  ];
  return (
    <section className={styles.identity}>
      <div className={styles.head}>
        <h1 className={styles.benchId}>{formatBenchId(device.benchId)}</h1>
        <div className={styles.state}>
          <StandingMark standing={device.standing} isLarge />
          <span>
            {label === undefined ? '' : `${label}: `}
            <DueMark dueState={device.dueState} dueOn={device.dueOn} />
          </span>
        </div>
      </div>
      <p className={styles.model}>
        {device.manufacturer} {device.model}
      </p>
      <PresumedIdentity device={device} />
      <dl className={styles.facts}>
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
};
