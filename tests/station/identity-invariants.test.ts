/** What must hold after any sequence of commands on a case of "who is this?", given in any order by anybody. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { metres } from '../../src/domain/brand.ts';
import { goodAnswer, procedure } from '../support/shipped-rules.ts';
import { demo, demoStation } from '../support/station-fixture.ts';

type Command =
  | { readonly kind: 'sign in'; readonly badge: string }
  | { readonly kind: 'propose'; readonly candidate: 0 | 1 }
  | { readonly kind: 'confirm'; readonly candidate: 0 | 1; readonly pin: string }
  | { readonly kind: 'disagree' }
  | { readonly kind: 'none' }
  | { readonly kind: 'inspect'; readonly candidate: 0 | 1 };

const candidate = fc.constantFrom(0 as const, 1 as const);
const commands: fc.Arbitrary<Command> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc
      .constantFrom(demo.inspector, demo.regularUser, demo.attendant, demo.expiredInspector, demo.user)
      .map((badge): Command => ({ kind: 'sign in', badge })),
  },
  { weight: 4, arbitrary: candidate.map((each): Command => ({ kind: 'propose', candidate: each })) },
  {
    weight: 5,
    arbitrary: fc.record({
      kind: fc.constant('confirm' as const),
      candidate,
      pin: fc.constantFrom(demo.pin, demo.pin, demo.pin, '999111'),
    }),
  },
  { weight: 1, arbitrary: fc.constant<Command>({ kind: 'disagree' }) },
  { weight: 1, arbitrary: fc.constant<Command>({ kind: 'none' }) },
  { weight: 2, arbitrary: candidate.map((each): Command => ({ kind: 'inspect', candidate: each })) },
);

/** Who may propose and who may be the second, as `demo-data/people.json` says of them. */
const competent: readonly string[] = [demo.inspector, demo.regularUser];
const entitled: readonly string[] = [...competent, demo.attendant];

const taking: Command[] = [
  { kind: 'sign in', badge: demo.inspector },
  { kind: 'propose', candidate: 0 },
  { kind: 'confirm', candidate: 0, pin: demo.pin },
  { kind: 'sign in', badge: demo.attendant },
  { kind: 'confirm', candidate: 1, pin: demo.pin },
  { kind: 'confirm', candidate: 0, pin: '999111' },
  { kind: 'confirm', candidate: 0, pin: demo.pin },
  { kind: 'sign in', badge: demo.inspector },
  { kind: 'inspect', candidate: 0 },
];

test('an identity is taken only by two entitled people who each gave a PIN, and the device then stays out', async () => {
  let taken = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(commands, { minLength: 8, maxLength: 16 }), async (sequence) => {
      const station = await demoStation();
      const { call, expectOutput } = station;
      const { identityCase } = await expectOutput('identity.open', {
        observation: { serial: 'Q25A3?03?', lengthM: metres(10) },
      });
      const shown = await expectOutput('identity.show', { identityCase });
      const ids = shown.identity.ranking.candidates.slice(0, 2).map(({ benchId }) => benchId);
      let badge: string = demo.inspector;
      let proposal: { candidate: number; badge: string } | undefined;
      let closed = false;
      for (const command of sequence) {
        switch (command.kind) {
          case 'sign in':
            await call('session.sign-in', { badge: command.badge });
            badge = command.badge;
            break;
          case 'propose': {
            const { ok } = await call('identity.propose', {
              identityCase,
              candidate: ids[command.candidate]!,
              pin: demo.pin,
            });
            expect(ok).toBe(!closed && proposal === undefined && competent.includes(badge));
            if (ok) proposal = { candidate: command.candidate, badge };
            break;
          }
          case 'confirm': {
            const { ok } = await call('identity.confirm', {
              identityCase,
              candidate: ids[command.candidate]!,
              lookedAtDevice: true,
              pin: command.pin,
            });
            if (!ok) break;
            expect(closed).toBe(false);
            expect(proposal?.candidate).toBe(command.candidate);
            expect(proposal?.badge).not.toBe(badge);
            expect(entitled).toContain(badge);
            expect(command.pin).toBe(demo.pin);
            closed = true;
            taken += 1;
            break;
          }
          case 'disagree': {
            const { ok } = await call('identity.disagree', { identityCase, pin: demo.pin });
            if (ok) proposal = undefined;
            break;
          }
          case 'none': {
            const { ok } = await call('identity.leave-unidentified', { identityCase });
            expect(ok).toBe(!closed && competent.includes(badge));
            closed ||= ok;
            break;
          }
          case 'inspect': {
            const started = await call('inspection.start', { benchId: ids[command.candidate]! });
            if (!started.ok) break;
            const { inspection, device } = started.output.inspection;
            for (const check of procedure.checks) {
              const answer = goodAnswer(check, device.ratedLengthM);
              await call('inspection.answer', { inspection, check: check.key, answer });
            }
            await call('inspection.sign', { inspection, pin: demo.pin });
            break;
          }
        }
        const { identity } = await expectOutput('identity.show', { identityCase });
        for (const [index, benchId] of ids.entries()) {
          const { device } = await expectOutput('device.show', { benchId });
          const isTaken = identity.state === 'taken' && proposal?.candidate === index;
          expect(device.presumedIdentity !== undefined).toBe(isTaken);
          if (isTaken) expect(device.standing).toBe('quarantined');
          else expect(device.reasons.map(({ key }) => key)).not.toContain('identity.presumed');
        }
      }
      await expectOutput('session.sign-in', { badge: demo.administrator });
      expect((await expectOutput('ledger.verify', {})).sound).toBe(true);
      await station.close();
    }),
    { numRuns: 12, examples: [[taking]] },
  );
  expect(taken).toBeGreaterThan(0);
}, 180_000);
