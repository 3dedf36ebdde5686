/** What the screens are shown of a correction: who corrected what, what was said before, and why. */
import { z } from 'zod';
import { type Amendment, amendmentSchema } from '../domain/amendment.ts';
import type { LedgerReader } from '../ledger/ledger.ts';

/** `by` is a name, and so are a model and a regular user among the values. `inspection` names the one it corrects. */
export const amendmentViewSchema = amendmentSchema.extend({ inspection: z.int().optional() });
export type AmendmentView = z.infer<typeof amendmentViewSchema>;

export const amendmentViews = async (
  reader: LedgerReader,
  amendments: readonly Amendment[],
  inspection?: number,
): Promise<AmendmentView[]> => {
  if (amendments.length === 0) return [];
  const people = new Map((await reader.people()).map(({ personId, name }) => [personId, name]));
  const sheets = new Map(
    (await reader.modelSheets()).map(({ modelSheetId, manufacturer, model }) => [
      modelSheetId,
      `${manufacturer} ${model}`,
    ]),
  );
  const nameOf = (id: string | undefined): string | undefined =>
    id === undefined ? undefined : (people.get(id) ?? id);
  return amendments.map(({ correction, ...amendment }) => ({
    ...amendment,
    by: people.get(amendment.by) ?? amendment.by,
    ...(inspection === undefined ? {} : { inspection }),
    correction:
      correction.field === 'modelSheet'
        ? {
            ...correction,
            was: sheets.get(correction.was) ?? correction.was,
            now: sheets.get(correction.now) ?? correction.now,
          }
        : correction.field === 'regularUser'
          ? { ...correction, was: nameOf(correction.was), now: nameOf(correction.now) }
          : correction,
  }));
};
