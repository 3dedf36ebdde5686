/** Amounts of money and percentages as people type them. */

/** Comma or point as decimal mark, at most two digits after it, 0 too; `undefined` where the text is no amount. */
export const amountOf = (text: string): number | undefined => {
  const trimmed = text.trim().replace(',', '.');
  return /^\d{1,6}(\.\d{1,2})?$/.test(trimmed) ? Number(trimmed) : undefined;
};

export const textOf = (value: number | undefined): string => (value === undefined ? '' : String(value));
