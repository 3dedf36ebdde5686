/** What can be asked of a manufacturer for the devices that are sent to it. */

export const returnAsks = ['repair', 'replacement', 'evidence'] as const;
export type ReturnAsk = (typeof returnAsks)[number];
