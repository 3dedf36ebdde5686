/** The signatures of an identity case: a badge alone signs nothing, neither for who proposes nor for who looks after them. */
import { unfitAsSecond } from '../domain/decide/identity.ts';
import type { Occasion } from '../domain/event.ts';
import type { IdentityCase } from '../domain/identity/identity-case.ts';
import type { Person } from '../domain/person.ts';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import type { LedgerReader } from '../ledger/ledger.ts';
import { identityCaseIn } from './identity-view.ts';
import { stationIn } from './lookup.ts';
import type { OperationContext } from './operation.ts';

type Unfit = (
  identity: IdentityCase,
  person: Person,
  occasion: Occasion,
  reader: LedgerReader,
) => Refusal | undefined | Promise<Refusal | undefined>;

/** Nobody's PIN is tried before it is clear that they could sign at all. */
export const signedInCase = async (
  context: OperationContext,
  identityCase: number,
  pin: string,
  unfit: Unfit,
): Promise<Person | Refusal> => {
  const { person, ledger } = context;
  if (person === undefined) return refusal('sign-in-needed');
  const refused = await ledger.read(async (reader) => {
    const station = await stationIn(reader);
    if (isRefusal(station)) return station;
    const identity = await identityCaseIn(reader, identityCase);
    return isRefusal(identity) ? identity : unfit(identity, person, context.occasion(station), reader);
  });
  return refused ?? (await context.pins.check(person, pin, context.now())) ?? person;
};

/** Somebody else than who proposed, and entitled. */
export const signedBySecond = (
  context: OperationContext,
  identityCase: number,
  pin: string,
): Promise<Person | Refusal> => signedInCase(context, identityCase, pin, unfitAsSecond);
