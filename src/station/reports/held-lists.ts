/** The lists of what was done about held devices. */
export const heldLists = ['evidence', 'fall cases', 'return batches'] as const;
export type HeldList = (typeof heldLists)[number];
