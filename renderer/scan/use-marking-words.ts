/** What a maker's code says of its device, in words. */
import { useCallback } from 'react';
import { type Identification, markedDateText } from '../../src/domain/marking-data.ts';
import { useText } from '../i18n/text.ts';

export const useMarkingWords = (): ((identification: Identification) => string) => {
  const { t } = useText();
  return useCallback(
    (identification) => {
      const { gtin, manufacturerReference, serial, individualId, lot, dateOfManufacture, expiry } =
        identification;
      const parts = [
        gtin && t('screens:markingData.gtin', { text: gtin }),
        manufacturerReference && t('screens:markingData.reference', { text: manufacturerReference }),
        serial && t('screens:markingData.serial', { text: serial }),
        individualId && t('screens:markingData.individualId', { text: individualId }),
        lot && t('screens:markingData.lot', { text: lot }),
        dateOfManufacture && t('screens:markingData.made', { date: markedDateText(dateOfManufacture) }),
        expiry && t('screens:markingData.expires', { date: markedDateText(expiry) }),
      ];
      return parts.filter((part) => part !== undefined && part !== '').join(' · ');
    },
    [t],
  );
};
