/** The short set-up of an empty station: its name, time zone and unit, and its first administrator. */
import { type FormEvent, useState } from 'react';
import type { LengthUnit } from '../../../src/domain/length.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { CheckBox } from '../../components/check-box.tsx';
import { Choice } from '../../components/choice.tsx';
import { designationFrom, emptyDesignation } from '../../components/designation-draft.ts';
import { DesignationFields } from '../../components/designation-fields.tsx';
import { faultsOf, hasFaults } from '../../components/form-faults.ts';
import { SelectInput } from '../../components/select-input.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './first-start.module.css';

const ownZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
const timeZones = [...new Set([ownZone, 'UTC', ...Intl.supportedValuesOf('timeZone')])].map((zone) => ({
  value: zone,
  label: zone.replaceAll('_', ' '),
}));

export const SetUpForm = ({ onBack }: { onBack(): void }) => {
  const { t } = useText();
  const [name, setName] = useState('');
  const [timeZone, setTimeZone] = useState(ownZone);
  const [lengthUnit, setLengthUnit] = useState<LengthUnit>('m');
  const [personName, setPersonName] = useState('');
  const [badge, setBadge] = useState('');
  const [pin, setPin] = useState('');
  const [pinAgain, setPinAgain] = useState('');
  const [inspects, setInspects] = useState(false);
  const [designation, setDesignation] = useState(emptyDesignation);
  const [wasTried, setTried] = useState(false);
  const setUp = useStationCommand('station.setup');

  useScanHandler(({ meaning, text }) => {
    if (meaning.meaning === 'command') return false;
    setBadge(text);
    return true;
  });

  const needed = (value: string): string | undefined =>
    value.trim() === '' ? t('screens:form.needed') : undefined;
  const refused = faultsOf(setUp.error);
  const own = {
    name: needed(name),
    personName: needed(personName),
    badge: /^[\x21-\x7e]{4,40}$/.test(badge.trim()) ? undefined : t('screens:form.badgeShape'),
    pin: needed(pin),
    pinAgain: pin === pinAgain ? undefined : t('screens:form.pinsDiffer'),
    designatedBy: inspects ? needed(designation.designatedBy) : undefined,
    designatedOn: inspects ? needed(designation.designatedOn) : undefined,
    trainingValidUntil: inspects ? needed(designation.trainingValidUntil) : undefined,
  };
  const faults: Partial<typeof own> = wasTried ? own : {};

  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (hasFaults(own)) return;
    await setUp.run({
      name,
      timeZone,
      lengthUnit,
      administrator: {
        name: personName,
        badge,
        pin,
        ...(inspects
          ? {
              designation: designationFrom(designation),
            }
          : {}),
      },
    });
  };

  return (
    <form className={styles.form} onSubmit={(event) => void submit(event)}>
      <h1>{t('screens:firstStart.setupTitle')}</h1>
      <div className={styles.columns}>
        <fieldset className={styles.column}>
          <h2>{t('screens:firstStart.stationHeading')}</h2>
          <TextInput
            label={t('screens:firstStart.name')}
            value={name}
            onChange={setName}
            error={faults.name ?? refused.at('name')}
            autoFocus
          />
          <SelectInput
            label={t('screens:firstStart.timeZone')}
            value={timeZone}
            options={timeZones}
            onChange={setTimeZone}
          />
          <Choice<LengthUnit>
            label={t('screens:firstStart.lengthUnit')}
            value={lengthUnit}
            options={[
              { value: 'm', label: t('screens:firstStart.metres') },
              { value: 'ft', label: t('screens:firstStart.feet') },
            ]}
            onChange={setLengthUnit}
          />
        </fieldset>
        <fieldset className={styles.column}>
          <h2>{t('screens:firstStart.administratorHeading')}</h2>
          <TextInput
            label={t('screens:firstStart.administratorName')}
            value={personName}
            onChange={setPersonName}
            error={faults.personName ?? refused.at('administrator.name')}
          />
          <TextInput
            label={t('screens:firstStart.badge')}
            value={badge}
            onChange={setBadge}
            hint={t('screens:firstStart.badgeHint')}
            error={faults.badge ?? refused.at('administrator.badge', 'badge')}
          />
          <div className={styles.pair}>
            <TextInput
              label={t('screens:firstStart.pin')}
              value={pin}
              onChange={setPin}
              type="password"
              inputMode="numeric"
              hint={t('screens:firstStart.pinHint')}
              error={faults.pin ?? refused.at('administrator.pin')}
            />
            <TextInput
              label={t('screens:firstStart.pinAgain')}
              value={pinAgain}
              onChange={setPinAgain}
              type="password"
              inputMode="numeric"
              error={faults.pinAgain}
            />
          </div>
          <CheckBox isSelected={inspects} onChange={setInspects}>
            {t('screens:firstStart.inspects')}
          </CheckBox>
          {inspects ? (
            <DesignationFields
              value={designation}
              onChange={setDesignation}
              errors={{
                designatedBy: faults.designatedBy ?? refused.at('administrator.designation.designatedBy'),
                designatedOn:
                  faults.designatedOn ?? refused.at('administrator.designation.designatedOn', 'designatedOn'),
                trainedOn: refused.at('administrator.designation.trainedOn', 'trainedOn'),
                trainingValidUntil:
                  faults.trainingValidUntil ??
                  refused.at('administrator.designation.trainingValidUntil', 'trainingValidUntil'),
              }}
            />
          ) : null}
        </fieldset>
      </div>
      <AlertLine sentence={refused.rest()} />
      <div className={styles.actions}>
        <Button onPress={onBack}>{t('screens:firstStart.back')}</Button>
        <Button type="submit" look="primary" isRunning={setUp.isRunning}>
          {t('screens:firstStart.create')}
        </Button>
      </div>
    </form>
  );
};
