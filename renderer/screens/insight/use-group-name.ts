/** The name of a group of devices, by what they are grouped by. */
import { ageClasses } from '../../../src/domain/age-class.ts';
import { typesOfUse } from '../../../src/domain/due/type-of-use.ts';
import { useText } from '../../i18n/text.ts';

export const useGroupName = (): ((by: string, value: string) => string) => {
  const { t, lengthText } = useText();
  return (by, value) => {
    if (value === 'unknown') return t('insight:unknown');
    switch (by) {
      case 'length':
        return lengthText(Number(value));
      case 'age': {
        const until = ageClasses.find((from) => from > Number(value));
        return until === undefined
          ? t('insight:agedFrom', { from: value })
          : t('insight:aged', { from: value, until });
      }
      case 'use': {
        const use = typesOfUse.find((each) => each === value);
        return use === undefined ? value : t(`program:use.${use}`);
      }
      case 'all':
        return t('insight:byWhat.all');
      default:
        return value;
    }
  };
};
