/** PINs: hashed with scrypt (RFC 7914); wrong ones are counted, slow whoever guesses, and are part of the record. */
import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { promisify } from 'node:util';
import type { Instant } from '../domain/brand.ts';
import type { Occasion } from '../domain/event.ts';
import type { Station } from '../domain/evolve.ts';
import { isAdministrator, type Person } from '../domain/person.ts';
import { type AfterWrongPin, afterWrongPin, isToBeRecorded } from '../domain/pin-tries.ts';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import type { RequestFrom } from '../domain/request-from.ts';
import type { Credential, Ledger } from '../ledger/ledger.ts';
import { stationIn } from './lookup.ts';

const derive = promisify<string, Buffer, number, { N: number; r: number; p: number }, Buffer>(scrypt);

/** N=2^14, r=8, p=1: the parameters of RFC 7914 §2 for interactive log-in (16 MiB, tens of milliseconds). */
const cost = { N: 16384, r: 8, p: 1 } as const;
const keyBytes = 32;

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
  /** `undefined` where the PIN is right; a wrong one is counted on the disk before this resolves. */
  check(person: Person, pin: string, now: Instant): Promise<Refusal | undefined>;
}

/** Who tries a PIN, and through what; it stands in the record beside a wrong one. */
export interface PinTry {
  readonly from: RequestFrom;
  occasion(station: Station): Occasion;
}

/** Hands out one guard for each call; tries of all of them are taken one after another, so that several at once cannot outrun the count. */
export const pinGuards = (ledger: Ledger): ((by: PinTry) => PinGuard) => {
  let turn: Promise<unknown> = Promise.resolve();
  return (by) => ({
    check: (person, pin, now) => {
      const mine = turn.then(() => checkOnce(ledger, by, person, pin, now));
      turn = mine.catch(() => undefined);
      return mine;
    },
  });
};

const checkOnce = async (
  ledger: Ledger,
  by: PinTry,
  person: Person,
  pin: string,
  now: Instant,
): Promise<Refusal | undefined> => {
  const { name, personId } = person;
  const credential = await ledger.read((reader) => reader.credential(personId));
  if (credential === undefined) return refusal('pin-not-set', { name }, 'pin');
  const wait = secondsUntil(credential.lockedUntil, now);
  if (wait > 0) return refusal('pin-locked', { seconds: wait }, 'pin');
  const mayBeReset = await hasOtherAdministrator(ledger, person);
  if (afterWrongPin(credential.failures, mayBeReset).kind === 'closed')
    return refusal('pin-closed', { name, count: credential.failures }, 'pin');
  const hash = await derive(pin, Buffer.from(credential.salt, 'hex'), keyBytes, cost);
  if (timingSafeEqual(hash, Buffer.from(credential.hash, 'hex'))) {
    if (credential.failures > 0)
      await ledger.writeAside((writer) =>
        writer.putCredential({ ...credential, failures: 0, lockedUntil: null }),
      );
    return undefined;
  }
  const inARow = credential.failures + 1;
  const after = afterWrongPin(inARow, mayBeReset);
  return (await count(ledger, by, credential, after, now)) ?? refusalOf(after, name, inARow);
};

/** The wrong try is counted, and recorded where it is one of those that are, in one transaction. */
const count = async (
  ledger: Ledger,
  { from, occasion }: PinTry,
  credential: Credential,
  after: AfterWrongPin,
  now: Instant,
): Promise<Refusal | undefined> => {
  const inARow = credential.failures + 1;
  const lockedUntil =
    after.kind === 'wait' ? new Date(Date.parse(now) + after.seconds * 1000).toISOString() : null;
  const counted: Credential = { ...credential, failures: inARow, lockedUntil };
  if (!isToBeRecorded(inARow, after)) {
    await ledger.writeAside((writer) => writer.putCredential(counted));
    return undefined;
  }
  const station = await ledger.read(stationIn);
  if (isRefusal(station)) return station;
  const { personId } = credential;
  const waitSeconds = after.kind === 'wait' ? { waitSeconds: after.seconds } : {};
  const recorded = await ledger.append(
    occasion(station),
    async () => [{ type: 'person.pin-refused', personId, inARow, from, ...waitSeconds }],
    (writer) => writer.putCredential(counted),
  );
  return isRefusal(recorded) ? recorded : undefined;
};

const refusalOf = (after: AfterWrongPin, name: string, inARow: number): Refusal => {
  switch (after.kind) {
    case 'tries left':
      return refusal('pin-wrong', { left: after.left }, 'pin');
    case 'wait':
      return refusal('pin-locked', { seconds: after.seconds }, 'pin');
    case 'closed':
      return refusal('pin-closed', { name, count: inARow }, 'pin');
  }
};

/** Somebody else who could set a new PIN. */
const hasOtherAdministrator = (ledger: Ledger, person: Person): Promise<boolean> =>
  ledger.read(async (reader) =>
    (await reader.people()).some((other) => other.personId !== person.personId && isAdministrator(other)),
  );

const secondsUntil = (moment: string | null, now: Instant): number =>
  moment === null ? 0 : Math.max(0, Math.ceil((Date.parse(moment) - Date.parse(now)) / 1000));
