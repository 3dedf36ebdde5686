/** The name of a file at the end of its path, of either kind of system. */
export const fileNameOf = (path: string): string => path.split(/[\\/]/).at(-1) ?? path;
