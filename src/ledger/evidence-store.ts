/** Where the files that the record names by their hash are kept: pictures, beside the record and as long as it. */

/** What the disk refuses is thrown as `StorageFault`. */
export interface EvidenceStore {
  /**
   * Returns the SHA-256 (hex) of the bytes, under which they are on the disk when the promise resolves. The event that names
   * the hash is recorded after that, so that nothing acknowledged lacks its file.
   */
  put(bytes: Uint8Array): Promise<string>;
  /** The bytes that have this hash, or what became of them. */
  get(sha256: string): Promise<Uint8Array | 'missing' | 'changed'>;
  /** The hashes of everything that is kept, in no order; whether the bytes still have them is for `get` to say. */
  list(): AsyncIterable<string>;
  /** Of all that is kept, as the disk says it; no byte is read. */
  size(): Promise<{ readonly count: number; readonly bytes: number }>;
}
