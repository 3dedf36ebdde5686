/** PINs: hashed with scrypt (RFC 7914), five wrong ones lock the person out for a minute. */
import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { promisify } from 'node:util';
import type { Instant } from '../domain/brand.ts';
import type { Person } from '../domain/person.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';
import type { Credential, Ledger } from '../ledger/ledger.ts';

const derive = promisify<string, Buffer, number, { N: number; r: number; p: number }, Buffer>(scrypt);

/** N=2^14, r=8, p=1: the parameters of RFC 7914 §2 for interactive log-in (16 MiB, tens of milliseconds). */
const cost = { N: 16384, r: 8, p: 1 } as const;
const keyBytes = 32;
export const triesBeforeLock = 5;
export const lockSeconds = 60;

/** 6 to 12 digits, not all the same, not a run up or down. */
export const isWeakPin = (pin: string): boolean => {
  if (!/^\d{6,12}$/.test(pin)) return true;
  const steps = [...pin].slice(1).map((digit, index) => Number(digit) - Number(pin[index]));
  return [0, 1, -1].some((step) => steps.every((each) => each === step));
};

export const hashPin = async (personId: string, pin: string): Promise<Credential> => {
  const salt = randomBytes(16);
  const hash = await derive(pin, salt, keyBytes, cost);
  return { personId, salt: salt.toString('hex'), hash: hash.toString('hex'), failures: 0, lockedUntil: null };
};

export interface PinGuard {
  /** `undefined` where the PIN is right; the count of wrong tries is kept on the disk. */
  check(person: Person, pin: string, now: Instant): Promise<Refusal | undefined>;
}

/** Tries are taken one after another, so that several at once cannot outrun the count. */
export const pinGuard = (ledger: Ledger): PinGuard => {
  let turn: Promise<unknown> = Promise.resolve();
  return {
    check: (person, pin, now) => {
      const mine = turn.then(() => checkOnce(ledger, person, pin, now));
      turn = mine.catch(() => undefined);
      return mine;
    },
  };
};

const checkOnce = async (
  ledger: Ledger,
  person: Person,
  pin: string,
  now: Instant,
): Promise<Refusal | undefined> => {
  const credential = await ledger.read((reader) => reader.credential(person.personId));
  if (credential === undefined) return refusal('pin-not-set', { name: person.name }, 'pin');
  const wait = secondsUntil(credential.lockedUntil, now);
  if (wait > 0) return refusal('pin-locked', { seconds: wait }, 'pin');
  const hash = await derive(pin, Buffer.from(credential.salt, 'hex'), keyBytes, cost);
  if (timingSafeEqual(hash, Buffer.from(credential.hash, 'hex'))) {
    if (credential.failures > 0) await put(ledger, { ...credential, failures: 0, lockedUntil: null });
    return undefined;
  }
  const failures = credential.failures + 1;
  if (failures < triesBeforeLock) {
    await put(ledger, { ...credential, failures, lockedUntil: null });
    return refusal('pin-wrong', { left: triesBeforeLock - failures }, 'pin');
  }
  const lockedUntil = new Date(Date.parse(now) + lockSeconds * 1000).toISOString();
  await put(ledger, { ...credential, failures: 0, lockedUntil });
  return refusal('pin-locked', { seconds: lockSeconds }, 'pin');
};

const put = (ledger: Ledger, credential: Credential) =>
  ledger.writeAside((writer) => writer.putCredential(credential));

const secondsUntil = (moment: string | null, now: Instant): number =>
  moment === null ? 0 : Math.max(0, Math.ceil((Date.parse(moment) - Date.parse(now)) / 1000));
