/**
 * Holds what a notice means at the moment at which the register comes to know it: a device that is registered, taken for one
 * of the register, or corrected in what a notice goes by, after the notice was recorded.
 */
import type { BenchId } from '../../domain/brand.ts';
import type { Decision } from '../../domain/decide/decision.ts';
import { removalOf } from '../../domain/decide/device.ts';
import { isHeldFor, recallReasonOf } from '../../domain/decide/notice.ts';
import type { Device } from '../../domain/device.ts';
import type { DomainEvent, Occasion } from '../../domain/event.ts';
import { evolveDevice, touchedBy } from '../../domain/evolve.ts';
import { isRefusal, type Refusal } from '../../domain/refusal.ts';
import type { Reason } from '../../domain/verdict.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { foundSoFar } from '../found-so-far.ts';
import type { Rules } from '../rules.ts';
import { matchOfDevice } from './match-register.ts';
import { holdSentence } from './notice-words.ts';

/** The decision with the removals that follow from the notices; a refusal stays one. */
export const holdingRecalled = async (
  reader: LedgerReader,
  decision: Decision,
  occasion: Occasion,
  rules: Rules,
): Promise<Decision> => {
  if (isRefusal(decision)) return decision;
  const benchIds = new Set(decision.flatMap(identified));
  if (benchIds.size === 0) return decision;
  const holds: DomainEvent[] = [];
  for (const benchId of benchIds) {
    const device = await deviceAfter(reader, benchId, decision, occasion);
    if (device === undefined || device.standing === 'scrapped') continue;
    const reasons = await reasonsFor(reader, device, decision, rules);
    if (isRefusal(reasons)) return reasons;
    if (reasons.length > 0) holds.push(...removalOf(device, reasons));
  }
  return [...decision, ...holds];
};

/** The device of which an event says who it is. */
const identified = (event: DomainEvent): BenchId[] => {
  switch (event.type) {
    case 'device.registered':
    case 'identity.taken':
      return [event.benchId];
    case 'record.amended': {
      const { field } = event.correction;
      const bears = field === 'serial' || field === 'dateOfManufacture' || field === 'modelSheet';
      return bears && event.benchId !== undefined ? [event.benchId] : [];
    }
    default:
      return [];
  }
};

/** As it is once the events are recorded; they have no number yet, and none is needed to know who it is. */
const deviceAfter = async (
  reader: LedgerReader,
  benchId: BenchId,
  events: readonly DomainEvent[],
  occasion: Occasion,
): Promise<Device | undefined> => {
  const before = (await reader.device(benchId))?.device;
  return events
    .filter((event) => touchedBy(event).benchId === benchId)
    .reduce<Device | undefined>(
      (device, event) => evolveDevice(device, { seq: 1, ...occasion, event }),
      before,
    );
};

const reasonsFor = async (
  reader: LedgerReader,
  device: Device,
  decision: readonly DomainEvent[],
  rules: Rules,
): Promise<readonly Reason[] | Refusal> => {
  const notices = await reader.notices();
  if (notices.length === 0) return [];
  const recorded = decision.find(
    (event) => event.type === 'model-sheet.recorded' && event.modelSheet.modelSheetId === device.modelSheetId,
  );
  const sheet =
    recorded?.type === 'model-sheet.recorded'
      ? recorded.modelSheet
      : await reader.modelSheet(device.modelSheetId);
  if (sheet === undefined) return [];
  const reasons: Reason[] = [];
  for (const notice of notices.toReversed()) {
    if (isHeldFor(device, notice.notice)) continue;
    const match = await matchOfDevice(reader, notice, device, sheet);
    if (match.level !== 'no') reasons.push(recallReasonOf(notice.notice, holdSentence(notice, match)));
  }
  if (reasons.length === 0) return [];
  const found = await foundSoFar(reader, device.openInspection, rules);
  return isRefusal(found) ? found : [...reasons, ...found];
};
