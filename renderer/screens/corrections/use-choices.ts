/** The model sheets and the people among which a correction chooses. */
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';

export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** By the field that is corrected; none for what is typed. The first of the people is nobody. */
export const useChoices = (): { readonly [field in string]?: readonly Choice[] } => {
  const { t, lengthText } = useText();
  const sheets = useStationQuery('model-sheet.list', {}).data?.modelSheets ?? [];
  const people = useStationQuery('person.list', {}).data?.people ?? [];
  return {
    modelSheet: sheets.map(({ modelSheetId, manufacturer, model, ratedLengthM }) => ({
      value: modelSheetId,
      label: `${manufacturer} ${model}, ${lengthText(ratedLengthM)}`,
    })),
    regularUser: [
      { value: '', label: t('corrections:none') },
      ...people.map(({ personId, name }) => ({ value: personId, label: name })),
    ],
  };
};
