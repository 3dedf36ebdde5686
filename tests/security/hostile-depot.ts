/** The invented depot, in which every text that a person can write is filled with script. */
import type { OperationName } from '../../src/station/contract.ts';
import { heldDevices } from '../e2e/held-depot.ts';
import { badges, type PreparedDepot, prepareDepot } from '../e2e/prepared-depot.ts';
import type { Stage } from '../e2e/stage.ts';
import type { Visit } from '../e2e/visit.ts';
import { hostileCaller } from './hostile-caller.ts';
import { writeEverything } from './hostile-words.ts';

export interface HostileDepot {
  readonly depot: PreparedDepot;
  /** `operation path`, for every text that was filled and taken. */
  readonly filled: ReadonlySet<string>;
}

export const hostileDepot = async (stage: Stage): Promise<HostileDepot> => {
  const filled = new Set<string>();
  const call = hostileCaller(stage, filled);
  const depot = await prepareDepot({ ...stage, expectOutput: call });
  await stage.expectOutput('session.sign-in', { badge: badges.administrator });
  const page = {
    evaluate: (_work: unknown, { operation, input }: { operation: OperationName; input: never }) =>
      call(operation, input),
  };
  await heldDevices({ page } as unknown as Visit);
  await writeEverything(call);
  await stage.expectOutput('session.sign-in', { badge: badges.administrator });
  for (const [index, name] of ['=1+1', '+1', '-1', '@SUM(1)', '=cmd|x'].entries()) {
    await stage.expectOutput('person.add', { name, badge: `FORMULA-${index}`, roles: ['user'] });
  }
  return { depot, filled };
};
