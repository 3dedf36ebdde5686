/** Hours as people read them, with the decimal mark of the language. */
import { useText } from '../../i18n/text.ts';

export const useHoursText = (): ((hours: number) => string) => {
  const { language } = useText();
  const format = new Intl.NumberFormat(language === 'es' ? 'es-ES' : 'en-GB', { maximumFractionDigits: 2 });
  return (hours) => format.format(hours);
};
