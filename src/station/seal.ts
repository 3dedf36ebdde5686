/**
 * The seal of a tag: a mark of the station, and a code over the words of the tag that only this station can make.
 *
 * HMAC-SHA-256 (RFC 2104, FIPS 198-1) under a random key that never leaves the data folder, cut to 40 bits: a made-up code
 * passes once in a million million times, and each try is a tag that somebody holds under the scanner.
 */
import { createHash, createHmac, randomBytes } from 'node:crypto';
import { benchIdAlphabet } from '../domain/bench-id/bench-id.ts';
import type { Station } from '../domain/evolve.ts';
import type { TagSeal } from '../domain/tag-content.ts';
import { sealedWords, type TagClaim } from '../domain/tag-text.ts';
import type { Ledger, LedgerReader } from '../ledger/ledger.ts';

const secretName = 'tag key';
const markSymbols = 4;
const codeSymbols = 8;

export interface Sealer {
  readonly mark: string;
  seal(claim: TagClaim): TagSeal;
}

/** The key is made when it is first needed, and kept from then on. */
export const sealerOf = async (ledger: Ledger, station: Station): Promise<Sealer> =>
  sealerWith(await keyOf(ledger), station);

/** Within a read that is under way, to judge tags. Where no tag was ever sealed there is no key, and no tag is found sound. */
export const sealerIn = async (reader: LedgerReader, station: Station): Promise<Sealer> =>
  sealerWith((await reader.secret(secretName)) ?? newKey(), station);

const sealerWith = (hexKey: string, station: Station): Sealer => {
  const key = Buffer.from(hexKey, 'hex');
  const mark = symbolsOf(createHash('sha256').update(station.stationId).digest(), markSymbols);
  return {
    mark,
    seal: (claim) => ({
      mark,
      code: symbolsOf(createHmac('sha256', key).update(sealedWords(claim, mark)).digest(), codeSymbols),
    }),
  };
};

const keyOf = async (ledger: Ledger): Promise<string> => {
  const known = await ledger.read((reader) => reader.secret(secretName));
  if (known !== undefined) return known;
  await ledger.writeAside((writer) => writer.keepSecret(secretName, newKey()));
  return keyOf(ledger);
};

const newKey = (): string => randomBytes(32).toString('hex');

/** The first bits of the digest, five to a symbol of the bench alphabet. */
const symbolsOf = (digest: Buffer, count: number): string => {
  const bits = [...digest].map((byte) => byte.toString(2).padStart(8, '0')).join('');
  return Array.from({ length: count }, (_, index) =>
    benchIdAlphabet.charAt(Number.parseInt(bits.slice(index * 5, index * 5 + 5), 2)),
  ).join('');
};
