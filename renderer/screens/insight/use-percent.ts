/** Shares as people read them: in whole per cent. */
import { useText } from '../../i18n/text.ts';

export const usePercent = (): ((share: number) => string) => {
  const { t } = useText();
  return (share) => t('insight:percent', { share: Math.round(share * 100) });
};
