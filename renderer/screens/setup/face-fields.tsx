/** The stock of a printer besides its size: flat, wrapped or folded, with a hole, with its red header printed already. */
import { AlertLine } from '../../components/alert-line.tsx';
import { CheckBox } from '../../components/check-box.tsx';
import { Choice } from '../../components/choice.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { type FaceDraft, folds, isSoundFace, shapes, sides, tails } from './face-draft.ts';
import styles from './printers.module.css';

export interface FaceFieldsProps {
  readonly draft: FaceDraft;
  change(part: Partial<FaceDraft>): void;
}

type NumberField = 'tailMm' | 'clearMm' | 'holeXMm' | 'holeYMm' | 'holeDiameterMm' | 'headerMm';

export const FaceFields = ({ draft, change }: FaceFieldsProps) => {
  const { t } = useText();
  const number = (field: NumberField) => (
    <TextInput
      label={t(`screens:face.${field}`)}
      value={draft[field]}
      inputMode="decimal"
      onChange={(text) => change({ [field]: text })}
    />
  );
  return (
    <details
      className={styles.more}
      open={draft.shape !== 'flat' || draft.hasHole || draft.hasHeader || undefined}
    >
      <summary>{t('screens:face.title')}</summary>
      <div className={styles.form}>
        <Choice
          label={t('screens:face.shape')}
          isCompact
          value={draft.shape}
          options={shapes.map((value) => ({ value, label: t(`screens:face.shapeOf.${value}`) }))}
          onChange={(shape) => change({ shape })}
        />
        {draft.shape === 'wrap' && (
          <div className={styles.pair}>
            <Choice
              label={t('screens:face.tailAt')}
              isCompact
              value={draft.tailAt}
              options={tails.map((value) => ({ value, label: t(`screens:face.tailAtOf.${value}`) }))}
              onChange={(tailAt) => change({ tailAt })}
            />
            {number('tailMm')}
          </div>
        )}
        {draft.shape === 'flag' && (
          <>
            <Choice
              label={t('screens:face.fold')}
              isCompact
              value={draft.fold}
              options={folds.map((value) => ({ value, label: t(`screens:face.foldOf.${value}`) }))}
              onChange={(fold) => change({ fold })}
            />
            <div className={styles.pair}>
              <Choice
                label={t('screens:face.sides')}
                isCompact
                value={draft.sides}
                options={sides.map((value) => ({ value, label: t(`screens:face.sidesOf.${value}`) }))}
                onChange={(chosen) => change({ sides: chosen })}
              />
              {number('clearMm')}
            </div>
          </>
        )}
        <CheckBox isSelected={draft.hasHole} onChange={(hasHole) => change({ hasHole })}>
          {t('screens:face.hole')}
        </CheckBox>
        {draft.hasHole && (
          <div className={styles.pair}>
            {number('holeXMm')}
            {number('holeYMm')}
            {number('holeDiameterMm')}
          </div>
        )}
        <CheckBox isSelected={draft.hasHeader} onChange={(hasHeader) => change({ hasHeader })}>
          {t('screens:face.header')}
        </CheckBox>
        {draft.hasHeader && number('headerMm')}
        <AlertLine sentence={isSoundFace(draft) ? undefined : t('screens:face.fault')} />
      </div>
    </details>
  );
};
