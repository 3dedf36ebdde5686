/** What must exist before a device that is held may come back, reason by reason, and why it stays at the desk meanwhile. */

/** By hand: what must exist for a reason, of each group one. `doubt-settled` needs a second person, who never comes here. */
export const needed = (key: string): readonly (readonly string[])[] => {
  if (key.startsWith('release.')) return [];
  if (key.startsWith('marking.')) return [['re-marking']];
  if (key === 'removal.recall') return [['recall-instruction']];
  if (key === 'removal.fall' || key.startsWith('check-in.fall.'))
    return [['investigation'], ['manufacturer-word', 'repair-certificate']];
  if (key.startsWith('check-in.exposure.')) return [['manufacturer-word', 'repair-certificate']];
  return [['repair-certificate']];
};

/** Why a device that is held stays at the desk. */
export const whyHeld = (isScrapped: boolean, reasons: readonly { readonly key: string }[]): string => {
  if (isScrapped) return 'checkout-scrapped';
  return reasons.some(({ key }) => key === 'removal.recall') ? 'checkout-recalled' : 'checkout-quarantined';
};
