/** Class names put together, those that are absent left out. */
export const classes = (...names: readonly (string | false | undefined)[]): string =>
  names.filter(Boolean).join(' ');
