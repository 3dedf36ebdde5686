/** A new version of the program, written line by line and signed by an administrator with their PIN. */
import { type FormEvent, useState } from 'react';
import { calendarDate } from '../../../src/domain/brand.ts';
import type { Program, RemovalGround } from '../../../src/domain/program.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { DateInput } from '../../components/date-input.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { useReadyStation } from '../../station/status.ts';
import { PinInput } from '../people/pin-input.tsx';
import { EmployerRulesFields } from './employer-rules-fields.tsx';
import { JurisdictionFields } from './jurisdiction-fields.tsx';
import { OtherRulesFields } from './other-rules-fields.tsx';
import styles from './program.module.css';
import { draftOf, monthsOf, type ProgramDraft, settingsFrom } from './program-draft.ts';
import type { ReleaseOfTrade } from './release-draft.ts';
import { ReleaseFields } from './release-fields.tsx';
import { RemovalGroundFields } from './removal-ground-fields.tsx';
import { UseFields } from './use-fields.tsx';

export interface ProgramEditorProps {
  /** What it begins with. */
  readonly from: Program;
  /** Grounds for taking a device out of service that no program goes without. */
  readonly groundsOfTrade: readonly RemovalGround[];
  /** What every program asks for before a removed device comes back. */
  readonly releaseOfTrade: ReleaseOfTrade;
  /** Told what the adoption came to, in words. */
  onAdopted(sentence: string): void;
  onCancel(): void;
}

export const ProgramEditor = ({
  from,
  groundsOfTrade,
  releaseOfTrade,
  onAdopted,
  onCancel,
}: ProgramEditorProps) => {
  const { t, language } = useText();
  const today = useReadyStation()?.today ?? '';
  const [draft, setDraft] = useState(() => draftOf(from, groundsOfTrade, language));
  const [effectiveFrom, setEffectiveFrom] = useState<string>(today);
  const [pin, setPin] = useState('');
  const [wasTried, setTried] = useState(false);
  const adopt = useStationCommand('program.adopt');
  const refused = faultsOf(adopt.error);
  const change = (changed: Partial<ProgramDraft>): void => setDraft({ ...draft, ...changed });
  const settings = settingsFrom(draft, from, language);

  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (settings === undefined || effectiveFrom === '' || pin.trim() === '') return;
    const result = await adopt.run({
      program: settings,
      effectiveFrom: calendarDate(effectiveFrom),
      pin,
    });
    setPin('');
    if (!result.ok) {
      setTried(false);
      return;
    }
    const { program, overdue, boundTrainings } = result.output;
    const adopted = t('program:edit.adopted', { version: program.version, count: overdue });
    const bound = boundTrainings === 0 ? '' : ` ${t('program:edit.bound', { count: boundTrainings })}`;
    onAdopted(`${adopted}${bound}`);
  };

  const needed = (text: string): string | undefined =>
    wasTried && text.trim() === '' ? t('screens:form.needed') : undefined;
  const intervalError =
    refused.at('program.inspectionInterval.months') ??
    (wasTried && monthsOf(draft.interval) === undefined ? t('program:edit.notWhole') : undefined);
  const pinError = refused.at('pin') ?? needed(pin);
  const fromError = refused.at('effectiveFrom') ?? needed(effectiveFrom);
  return (
    <form className={styles.form} onSubmit={(event) => void submit(event)} aria-labelledby="program-edit">
      <h2 id="program-edit">{t('program:edit.title')}</h2>
      <div className={styles.fields}>
        <TextInput
          label={t('program:edit.name')}
          value={draft.title}
          onChange={(title) => change({ title })}
          error={needed(draft.title)}
          autoFocus
        />
        <TextInput
          label={t('program:edit.document')}
          value={draft.document}
          onChange={(document) => change({ document })}
        />
        <TextInput
          label={t('program:edit.interval')}
          value={draft.interval}
          onChange={(interval) => change({ interval })}
          error={intervalError}
          inputMode="numeric"
        />
      </div>
      <UseFields draft={draft} onChange={change} wasTried={wasTried} refused={refused} />
      <div className={styles.pair}>
        <JurisdictionFields
          jurisdictions={draft.jurisdictions}
          onChange={(jurisdictions) => change({ jurisdictions: [...jurisdictions] })}
        />
        <EmployerRulesFields
          rules={draft.employerRules}
          onChange={(employerRules) => change({ employerRules: [...employerRules] })}
        />
      </div>
      <RemovalGroundFields
        grounds={draft.grounds}
        ofTrade={groundsOfTrade}
        onChange={(grounds) => change({ grounds })}
      />
      <ReleaseFields
        release={draft.release}
        ofTrade={releaseOfTrade}
        onChange={(release) => change({ release })}
      />
      <OtherRulesFields draft={draft} onChange={change} wasTried={wasTried} />
      <section className={styles.group}>
        <p>{t('program:edit.signHint')}</p>
        <div className={styles.pair}>
          <DateInput
            label={t('program:edit.from')}
            value={effectiveFrom}
            onChange={setEffectiveFrom}
            error={fromError}
          />
          <PinInput label={t('program:edit.pin')} value={pin} onChange={setPin} error={pinError} />
        </div>
        <AlertLine sentence={adopt.error?.sentence} />
        <div className={styles.actions}>
          <Button onPress={onCancel}>{t('screens:form.cancel')}</Button>
          <Button type="submit" look="primary" isRunning={adopt.isRunning}>
            {t(adopt.isRunning ? 'program:edit.signing' : 'program:edit.sign')}
          </Button>
        </div>
      </section>
    </form>
  );
};
