/** Whether a person may sign, in words, and the sign that stands beside them. */
import type { PersonView } from '../../../src/station/person-view.ts';
import type { IconName } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { useReadyStation } from '../../station/status.ts';

export interface SigningWords {
  readonly icon: IconName;
  readonly words: string;
}

export const useSigningWords = (): ((person: PersonView) => SigningWords) => {
  const { t, dateText } = useText();
  const today = useReadyStation()?.today ?? '';
  return ({ designation, left, trainingNotice }) => {
    if (left !== undefined)
      return { icon: 'away', words: t('people:signing.left', { date: dateText(left.on) }) };
    if (designation === undefined) return { icon: 'blank', words: t('people:signing.none') };
    const { designatedOn, trainingValidUntil } = designation;
    if (designatedOn > today)
      return { icon: 'clock', words: t('people:signing.notYet', { date: dateText(designatedOn) }) };
    const date = dateText(trainingValidUntil);
    switch (trainingNotice) {
      case 'expired':
        return { icon: 'late', words: t('people:signing.expired', { date }) };
      case 'ends soon':
        return { icon: 'clock', words: t('people:signing.soon', { date }) };
      case undefined:
        return { icon: 'check', words: t('people:signing.may', { date }) };
    }
  };
};
