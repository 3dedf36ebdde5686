/** What a long work on the record is given: a wish to stop, and somebody to tell how far it is. */
export interface BackupControl {
  readonly signal: AbortSignal;
  /** In files, each of which is written and read again; `of` is 0 while it is not known yet. */
  onProgress(progress: { readonly done: number; readonly of: number }): void;
}
