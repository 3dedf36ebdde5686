/** Numbers as people type them. */

/** Comma or point as decimal mark; `undefined` where the text is no number above 0. */
export const positiveNumber = (text: string): number | undefined => {
  const trimmed = text.trim().replace(',', '.');
  if (!/^\d{1,6}(\.\d{1,4})?$/.test(trimmed)) return undefined;
  const value = Number(trimmed);
  return value > 0 ? value : undefined;
};
