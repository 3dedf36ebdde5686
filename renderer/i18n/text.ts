/** Every word on the screens: messages of the catalogues, messages of the station, dates and lengths as people read them. */
import { useMemo } from 'react';
import { useTranslation } from 'react-i18next';
import {
  type DiameterUnit,
  diameterText as diameterInUnit,
  diameterUnitOf,
  type LengthUnit,
  lengthText as lengthIn,
} from '../../src/domain/length.ts';
import type { Language, Message } from '../../src/domain/message.ts';
import { useLengthUnit } from '../station/status.ts';
import { currentLanguage, namespaces, speak, type TextKey } from './catalogue.ts';

export type { TextKey } from './catalogue.ts';

export interface Text {
  /** The message of that key, `{{name}}` replaced by `values.name`. */
  t(key: TextKey, values?: Readonly<Record<string, string | number>>): string;
  readonly language: Language;
  setLanguage(language: Language): void;
  /** `2026-11-24` as `24 Nov 2026`: the month in letters, so that nobody takes it for the day. */
  dateText(isoDate: string): string;
  /** The month of a date: `Nov 2026`. */
  monthText(isoDate: string): string;
  /** Metres in the station's unit: `15.24 m`, `50 ft`. */
  lengthText(lengthM: number): string;
  /** Millimetres as callipers of the station say them: `4.7 mm`, `0.1875 in`. */
  diameterText(diameterMm: number): string;
  readonly lengthUnit: LengthUnit;
  readonly diameterUnit: DiameterUnit;
  /** A message of the station's own data. */
  inLanguage(message: Message): string;
}

export const months = ['01', '02', '03', '04', '05', '06', '07', '08', '09', '10', '11', '12'] as const;

export const useText = (): Text => {
  const { t } = useTranslation(namespaces);
  const lengthUnit = useLengthUnit();
  const language = currentLanguage();
  return useMemo(
    () => ({
      t: (key, values) => t(key, values ?? {}),
      language,
      setLanguage: speak,
      dateText: (isoDate) => {
        const [year = '', month = '', day = ''] = isoDate.slice(0, 10).split('-');
        const known = months.find((each) => each === month);
        return known === undefined ? isoDate : `${Number(day)} ${t(`screens:month.${known}`)} ${year}`;
      },
      monthText: (isoDate) => {
        const [year = '', month = ''] = isoDate.split('-');
        const known = months.find((each) => each === month);
        return known === undefined ? isoDate : `${t(`screens:month.${known}`)} ${year}`;
      },
      lengthText: (lengthM) => lengthIn(lengthM, lengthUnit, language),
      diameterText: (diameterMm) => diameterInUnit(diameterMm, lengthUnit, language),
      lengthUnit,
      diameterUnit: diameterUnitOf(lengthUnit),
      inLanguage: (message) => message[language],
    }),
    [t, language, lengthUnit],
  );
};
