/** A model sheet in two lines. */
import { gtin14 } from '../../src/domain/marking-data.ts';
import type { ModelSheet } from '../../src/domain/model-sheet.ts';
import { useText } from '../i18n/text.ts';
import { useProgramWords } from '../i18n/use-program-words.ts';
import styles from './model-sheet-line.module.css';

export const ModelSheetLine = ({ sheet }: { readonly sheet: ModelSheet }) => {
  const { t, lengthText, diameterText, language } = useText();
  const words = useProgramWords();
  const diameter = String(sheet.lifelineDiameterMm);
  const { manufacturerReference } = sheet;
  const gtin = manufacturerReference && gtin14(manufacturerReference);
  const reference = gtin
    ? t('screens:markingData.gtin', { text: gtin })
    : manufacturerReference && t('screens:markingData.reference', { text: manufacturerReference });
  const details = [
    t('screens:device.lifelineText', {
      material: t(`screens:material.${sheet.lifelineMaterial}`),
      diameter: language === 'es' ? diameter.replace('.', ',') : diameter,
    }),
    ...(sheet.lifelineMinimumDiameterMm === undefined
      ? []
      : [t('evidence:sheet.atLeast', { minimum: diameterText(sheet.lifelineMinimumDiameterMm) })]),
    t('screens:device.kilograms', sheet.capacityKg),
    sheet.standard,
    ...(reference === undefined ? [] : [reference]),
    ...(sheet.loadIndicatorFitted ? [t('screens:modelSheet.indicatorYes')] : []),
    ...(sheet.manufacturerIntervalMonths === undefined
      ? []
      : [t('screens:modelSheet.every', { months: sheet.manufacturerIntervalMonths })]),
    ...(sheet.manufacturerRevalidationMonths === undefined
      ? []
      : [t('program:intervals.revalidated', { months: words.months(sheet.manufacturerRevalidationMonths) })]),
    ...(sheet.serviceLife === undefined
      ? []
      : [
          t('program:intervals.lasts', {
            years: words.months(sheet.serviceLife.years * 12),
            from: t(`program:intervals.${sheet.serviceLife.from}`),
          }),
        ]),
  ];
  return (
    <>
      <span className={styles.name}>
        {sheet.manufacturer} {sheet.model}, {lengthText(sheet.ratedLengthM)}
      </span>
      <span className={styles.details}>{details.join(' · ')}</span>
    </>
  );
};
