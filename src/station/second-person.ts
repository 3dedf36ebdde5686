/** The second person of an identity case: somebody else than who proposed, entitled, and signed with their own PIN. */
import { unfitAsSecond } from '../domain/decide/identity.ts';
import type { Person } from '../domain/person.ts';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import { identityCaseIn } from './identity-view.ts';
import { stationIn } from './lookup.ts';
import type { OperationContext } from './operation.ts';

/** Nobody's PIN is tried before it is clear that they could sign at all. */
export const signedBySecond = async (
  context: OperationContext,
  identityCase: number,
  pin: string,
): Promise<Person | Refusal> => {
  const { person, ledger } = context;
  if (person === undefined) return refusal('sign-in-needed');
  const unfit = await ledger.read(async (reader) => {
    const station = await stationIn(reader);
    if (isRefusal(station)) return station;
    const identity = await identityCaseIn(reader, identityCase);
    return isRefusal(identity) ? identity : unfitAsSecond(identity, person, context.occasion(station));
  });
  return unfit ?? (await context.pins.check(person, pin, context.now())) ?? person;
};
