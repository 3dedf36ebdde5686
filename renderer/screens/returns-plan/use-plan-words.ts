/** How a plan of returns is said on the screen: its decisions in a line, and money. */
import { useText } from '../../i18n/text.ts';
import type { Decision } from './decisions.ts';

export const usePlanWords = (currency: string) => {
  const { t, language, monthText, lengthText } = useText();
  const digits = new Intl.NumberFormat(language === 'es' ? 'es-ES' : 'en-GB', {
    minimumFractionDigits: 2,
    maximumFractionDigits: 2,
  });
  return {
    money: (amount: number): string => `${digits.format(amount)} ${currency}`.trim(),
    title: (decision: Decision): string => {
      switch (decision.kind) {
        case 'send': {
          const { ids, manufacturer, from } = decision.shipment;
          return t('plan:title.send', { count: ids.length, manufacturer, month: monthText(from) });
        }
        case 'order': {
          const count = decision.orders.reduce((sum, order) => sum + order.count, 0);
          return t('plan:title.order', { count, length: lengthText(decision.lengthM) });
        }
        case 'scrap':
          return t('plan:title.scrap', { count: decision.choices.length });
        case 'undecided':
          return t('plan:title.undecided', { count: decision.choices.length });
      }
    },
  };
};
