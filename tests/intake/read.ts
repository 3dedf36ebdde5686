/** Texts as they are read in 2026: what a maker's code says, and why another cannot be read. */
import { readScan } from '../../src/intake/read-scan.ts';

export const year = 2026;

export const read = (text: string) => readScan(text, year);

export const dataOf = (text: string) => {
  const scan = read(text);
  if (scan.kind !== 'marking data') throw new Error(`${JSON.stringify(text)} is ${JSON.stringify(scan)}`);
  return scan;
};

export const faultOf = (text: string) => {
  const scan = read(text);
  return scan.kind === 'malformed' ? scan.fault.code : scan.kind;
};
