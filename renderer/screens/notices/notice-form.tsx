/** The fields of a manufacturer's notice. */
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { DateInput } from '../../components/date-input.tsx';
import { SelectInput } from '../../components/select-input.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { GroupFields } from './group-fields.tsx';
import { LinesInput } from './lines-input.tsx';
import { emptyGroup, isMadeWrong, type NoticeDraft, type NoticeFault, nextKey } from './notice-draft.ts';
import styles from './notices.module.css';

export interface NoticeFormProps {
  readonly draft: NoticeDraft;
  /** Those that are shown. */
  readonly faults: ReadonlySet<NoticeFault>;
  onChange(draft: NoticeDraft): void;
}

export const NoticeForm = ({ draft, faults, onChange }: NoticeFormProps) => {
  const { t } = useText();
  const sheets = useStationQuery('model-sheet.list', {});
  const makers = new Set(sheets.data?.modelSheets.map(({ manufacturer }) => manufacturer));
  if (draft.manufacturer !== '') makers.add(draft.manufacturer);
  const set = (change: Partial<NoticeDraft>): void => onChange({ ...draft, ...change });
  const fault = (name: NoticeFault): string | undefined =>
    faults.has(name) ? t(`notices:form.fault.${name}`) : undefined;
  const setGroup = (index: number, group: NoticeDraft['groups'][number]): void =>
    set({ groups: draft.groups.map((each, place) => (place === index ? group : each)) });
  return (
    <>
      <div className={styles.pair}>
        <div>
          <SelectInput
            label={t('notices:form.manufacturer')}
            value={draft.manufacturer}
            options={[
              { value: '', label: t('notices:form.choose') },
              ...[...makers].map((value) => ({ value, label: value })),
            ]}
            onChange={(manufacturer) => set({ manufacturer })}
          />
          <AlertLine sentence={fault('manufacturer')} />
        </div>
        <TextInput
          label={t('notices:form.reference')}
          error={fault('reference')}
          value={draft.reference}
          onChange={(reference) => set({ reference })}
        />
      </div>
      <div className={styles.pair}>
        <DateInput
          label={t('notices:form.issuedOn')}
          error={fault('issuedOn')}
          value={draft.issuedOn}
          onChange={(issuedOn) => set({ issuedOn })}
        />
      </div>
      <div className={styles.pair}>
        <LinesInput
          label={t('notices:form.instructionEn')}
          hint={t('notices:form.instructionHint')}
          error={fault('instruction')}
          value={draft.instructionEn}
          onChange={(instructionEn) => set({ instructionEn })}
        />
        <LinesInput
          label={t('notices:form.instructionEs')}
          value={draft.instructionEs}
          onChange={(instructionEs) => set({ instructionEs })}
        />
      </div>
      {draft.groups.map((group, index) => (
        <GroupFields
          key={group.key}
          number={index + 1}
          group={group}
          madeFault={isMadeWrong(group) ? fault('made') : undefined}
          onChange={(changed) => setGroup(index, changed)}
          onRemove={
            draft.groups.length === 1
              ? undefined
              : () => set({ groups: draft.groups.filter((_, place) => place !== index) })
          }
        />
      ))}
      <div className={styles.actions}>
        <Button
          icon="plus"
          onPress={() => set({ groups: [...draft.groups, emptyGroup(nextKey(draft.groups))] })}
        >
          {t('notices:form.addGroup')}
        </Button>
      </div>
    </>
  );
};
