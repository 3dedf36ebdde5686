/** What a printer prints on and how: its stock, its dots, and what only its kind has. */
import { Choice } from '../../components/choice.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { colours, compressions, dpiTexts, formats, stockRules } from './printer-draft.ts';
import type { PrinterFieldsProps } from './printer-place-fields.tsx';
import styles from './printers.module.css';

export const PrinterStockFields = (props: PrinterFieldsProps) => {
  const { t } = useText();
  const { draft, change, faultAt } = props;
  return (
    <>
      <div className={styles.pair}>
        <TextInput
          label={t('screens:printers.width')}
          value={draft.widthMm}
          inputMode="decimal"
          onChange={(widthMm) => change({ widthMm })}
          error={faultAt('widthMm', 'settings.stock.widthMm')}
        />
        <TextInput
          label={t('screens:printers.height')}
          value={draft.heightMm}
          inputMode="decimal"
          onChange={(heightMm) => change({ heightMm })}
          error={faultAt('heightMm', 'settings.stock.heightMm')}
        />
      </div>
      <div className={styles.pair}>
        <Choice
          label={t('screens:printers.dpi')}
          isCompact
          value={draft.dpi}
          options={dpiTexts.map((value) => ({ value, label: value }))}
          onChange={(dpi) => change({ dpi })}
        />
        {draft.kind !== 'thermal' && (
          <Choice
            label={t('screens:printers.colour')}
            isCompact
            value={draft.colour}
            options={colours.map((value) => ({ value, label: t(`screens:printers.colourOf.${value}`) }))}
            onChange={(colour) => change({ colour })}
          />
        )}
      </div>
      {draft.kind === 'thermal' && <ThermalFields {...props} />}
      {draft.kind === 'ipp' && <IppFields {...props} />}
    </>
  );
};

const ThermalFields = ({ draft, change, faultAt }: PrinterFieldsProps) => {
  const { t } = useText();
  return (
    <>
      <div className={styles.pair}>
        <TextInput
          label={t('screens:printers.darkness')}
          value={draft.darkness}
          inputMode="numeric"
          hint={t('screens:printers.darknessHint')}
          onChange={(darkness) => change({ darkness })}
          error={faultAt('darkness', 'settings.darkness')}
        />
        <TextInput
          label={t('screens:printers.speed')}
          value={draft.speed}
          inputMode="numeric"
          hint={t('screens:printers.speedHint')}
          onChange={(speed) => change({ speed })}
          error={faultAt('speed', 'settings.speedInchesPerSecond')}
        />
      </div>
      <details className={styles.more}>
        <summary>{t('screens:printers.more')}</summary>
        <div className={styles.form}>
          <Choice
            label={t('screens:printers.compression')}
            isCompact
            value={draft.compression}
            options={compressions.map((value) => ({
              value,
              label: t(`screens:printers.compressionOf.${value}`),
            }))}
            onChange={(compression) => change({ compression })}
          />
        </div>
      </details>
    </>
  );
};

const IppFields = ({ draft, change, faultAt }: PrinterFieldsProps) => {
  const { t } = useText();
  return (
    <details className={styles.more} open={faultAt('certificateSha256') !== undefined || undefined}>
      <summary>{t('screens:printers.more')}</summary>
      <div className={styles.form}>
        <Choice
          label={t('screens:printers.format')}
          isCompact
          value={draft.format}
          options={formats.map((value) => ({ value, label: t(`screens:printers.formatOf.${value}`) }))}
          onChange={(format) => change({ format })}
        />
        <Choice
          label={t('screens:printers.loadedStock')}
          isCompact
          value={draft.loadedStock}
          options={stockRules.map((value) => ({
            value,
            label: t(`screens:printers.loadedStockOf.${value}`),
          }))}
          onChange={(loadedStock) => change({ loadedStock })}
        />
        <TextInput
          label={t('screens:printers.certificate')}
          value={draft.certificateSha256}
          hint={t('screens:printers.certificateHint')}
          onChange={(certificateSha256) => change({ certificateSha256 })}
          error={faultAt('certificateSha256', 'settings.certificateSha256')}
        />
      </div>
    </details>
  );
};
