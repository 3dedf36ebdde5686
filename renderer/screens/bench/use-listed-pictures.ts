/** The pictures of an inspection with their words: which check they show, since when they are kept and by whom. */
import { useCallback } from 'react';
import type { Check } from '../../../src/domain/procedure.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import type { ListedPicture } from '../../camera/picture-list.tsx';
import { useText } from '../../i18n/text.ts';

type Picture = OutputOf<'inspection.pictures'>['pictures'][number];

export const useListedPictures = (
  checks: readonly Check[],
): ((pictures: readonly Picture[]) => readonly ListedPicture[]) => {
  const { t, dateText, inLanguage } = useText();
  return useCallback(
    (pictures) =>
      pictures.map((picture, index) => {
        const check = checks.find(({ key }) => key === picture.check);
        const of = check === undefined ? picture.check : inLanguage(check.title);
        return {
          ...picture,
          key: `${picture.check} ${picture.sha256}`,
          caption: t('camera:pictures.kept', {
            of,
            date: dateText(picture.keptOn),
            name: picture.keptBy,
          }),
          name: `${of}, ${index + 1}`,
        };
      }),
    [checks, t, dateText, inLanguage],
  );
};
