/** Release rules in words: what they are for, and what they ask for. */
import type { EvidenceNeeds, StrictRelease } from '../../../src/domain/held/release-rules.ts';
import { type TextKey, useText } from '../../i18n/text.ts';
import type { ReleaseOfTrade } from './release-draft.ts';

export interface ReleaseWords {
  /** What a device was removed for; a reason that has no rule of its own is named by its key. */
  ruleName(rule: string): string;
  kindName(kind: string): string;
  needs(needs: EvidenceNeeds): string;
  /** All that a rule of the employer asks for. */
  asks(rule: StrictRelease): string;
}

export const useReleaseWords = ({ kinds, rules }: ReleaseOfTrade): ReleaseWords => {
  const { t, inLanguage } = useText();
  const ruleName = (rule: string): string =>
    rules.some(({ key }) => key === rule) ? t(`program:release.name.${rule}` as TextKey) : rule;
  const kindName = (kind: string): string => {
    const label = kinds.find(({ key }) => key === kind)?.label;
    return label === undefined ? kind : inLanguage(label);
  };
  const needsText = (needs: EvidenceNeeds): string =>
    needs.length === 0
      ? t('program:release.nothing')
      : needs
          .map((group) => group.map(kindName).join(t('program:release.or')))
          .join(t('program:release.and'));
  return {
    ruleName,
    kindName,
    needs: needsText,
    asks: ({ needs, persons }) =>
      [
        needsText(needs),
        ...(persons === undefined ? [] : [t('program:release.persons', { count: persons })]),
      ].join(t('program:release.and')),
  };
};
