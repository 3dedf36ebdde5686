/** What a printer is called and how it is reached: only the fields of its kind. */
import { CheckBox } from '../../components/check-box.tsx';
import { Choice } from '../../components/choice.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { connections, type PrinterDraft, type PrinterFaults } from './printer-draft.ts';
import styles from './printers.module.css';

export interface PrinterFieldsProps {
  readonly draft: PrinterDraft;
  change(part: Partial<PrinterDraft>): void;
  /** What is wrong with a field, under its name here and its names at the station. */
  faultAt(field: keyof PrinterFaults, ...names: readonly string[]): string | undefined;
}

export const PrinterPlaceFields = (props: PrinterFieldsProps) => {
  const { t } = useText();
  const { draft, change, faultAt } = props;
  return (
    <>
      <div className={styles.pair}>
        <TextInput
          label={t('screens:printers.name')}
          value={draft.name}
          onChange={(name) => change({ name })}
          hint={t('screens:printers.nameHint')}
          error={faultAt('name', 'settings.name')}
        />
        <PlaceOfKind {...props} />
      </div>
      <MoreOfKind {...props} />
    </>
  );
};

/** Where it is, beside its name. */
const PlaceOfKind = (props: PrinterFieldsProps) => {
  const { t } = useText();
  const { draft, change, faultAt } = props;
  switch (draft.kind) {
    case 'folder':
      return (
        <TextInput
          label={t('screens:printers.folder')}
          value={draft.folder}
          onChange={(folder) => change({ folder })}
          hint={t('screens:printers.folderHint')}
          error={faultAt('folder', 'settings.folder')}
        />
      );
    case 'queue':
      return <QueueField {...props} name="settings.queue" />;
    case 'ipp':
      return (
        <TextInput
          label={t('screens:printers.address')}
          value={draft.address}
          onChange={(address) => change({ address })}
          hint={t('screens:printers.addressHint')}
          error={faultAt('address', 'settings.address')}
        />
      );
    case 'thermal':
      return (
        <Choice
          label={t('screens:printers.by')}
          isCompact
          value={draft.by}
          options={connections.map((value) => ({ value, label: t(`screens:printers.byOf.${value}`) }))}
          onChange={(by) => change({ by })}
        />
      );
  }
};

const MoreOfKind = (props: PrinterFieldsProps) => {
  const { t } = useText();
  const { draft, change, faultAt } = props;
  switch (draft.kind) {
    case 'folder':
      return (
        <CheckBox isSelected={draft.withPicture} onChange={(withPicture) => change({ withPicture })}>
          {t('screens:printers.withPicture')}
        </CheckBox>
      );
    case 'queue':
    case 'ipp':
      return null;
    case 'thermal':
      return draft.by === 'queue' ? (
        <QueueField {...props} name="settings.connection.queue" />
      ) : (
        <div className={styles.pair}>
          <TextInput
            label={t('screens:printers.host')}
            value={draft.host}
            onChange={(host) => change({ host })}
            hint={t('screens:printers.hostHint')}
            error={faultAt('host', 'settings.connection.host')}
          />
          <TextInput
            label={t('screens:printers.port')}
            value={draft.port}
            inputMode="numeric"
            onChange={(port) => change({ port })}
            error={faultAt('port', 'settings.connection.port')}
          />
        </div>
      );
  }
};

const QueueField = ({ draft, change, faultAt, name }: PrinterFieldsProps & { readonly name: string }) => {
  const { t } = useText();
  return (
    <TextInput
      label={t('screens:printers.queue')}
      value={draft.queue}
      onChange={(queue) => change({ queue })}
      hint={t('screens:printers.queueHint')}
      error={faultAt('queue', name)}
    />
  );
};
