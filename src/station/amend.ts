/** A correction of one earlier event, held against the register as it is now. */
import type { WantedCorrection } from '../domain/amendment.ts';
import type { BenchId } from '../domain/brand.ts';
import { yearOf } from '../domain/calendar.ts';
import {
  type Amending,
  type DeviceField,
  decideAmendAnswer,
  decideAmendDevice,
  decideAmendName,
} from '../domain/decide/amend.ts';
import type { Decision } from '../domain/decide/decision.ts';
import { isRefusal, refusal } from '../domain/refusal.ts';
import type { LedgerReader } from '../ledger/ledger.ts';
import { boundCodes, contradiction } from './bound-code.ts';
import { latestAnswer } from './latest-answer.ts';
import { caseIn, deviceIn, personIn } from './lookup.ts';
import { programIn } from './program-in.ts';
import type { Rules } from './rules.ts';

/** Refuses where the event does not say what is to be corrected. */
export const amend = async (
  reader: LedgerReader,
  rules: Rules,
  wanted: WantedCorrection,
  amending: Amending,
): Promise<Decision> => {
  const { amends } = amending;
  const original = await reader.event(amends);
  const mismatch = refusal('amend-not-there', { amends, field: wanted.field }, 'amends');
  if (original === undefined) return mismatch;
  const { event } = original;
  switch (wanted.field) {
    case 'serial':
    case 'dateOfManufacture':
    case 'modelSheet':
    case 'regularUser':
      return event.type === 'device.registered'
        ? amendDevice(reader, rules, event.benchId, wanted, amending)
        : mismatch;
    case 'answer': {
      if (event.type !== 'inspection.answered') return mismatch;
      const found = await caseIn(reader, event.inspection, rules);
      if (isRefusal(found)) return found;
      const { inspection, check } = event;
      const events = await reader.eventsOf(event.benchId);
      return latestAnswer(events, inspection, check)?.seq === amends
        ? decideAmendAnswer(wanted, check, found.inspection, found, amending)
        : refusal('amend-answered-later', { check }, 'amends');
    }
    case 'name': {
      if (event.type !== 'person.added' && event.type !== 'person.name-changed') return mismatch;
      const personId = event.type === 'person.added' ? event.person.personId : event.personId;
      const corrected = await personIn(reader, personId);
      return isRefusal(corrected) ? corrected : decideAmendName(wanted, corrected, amending);
    }
  }
};

const amendDevice = async (
  reader: LedgerReader,
  rules: Rules,
  benchId: BenchId,
  wanted: Extract<WantedCorrection, { field: DeviceField }>,
  amending: Amending,
): Promise<Decision> => {
  const row = await deviceIn(reader, benchId);
  if (isRefusal(row)) return row;
  const { device } = row;
  const { field, now } = wanted;
  const serial = field === 'serial' ? now : device.serial;
  const modelSheetId = field === 'modelSheet' ? now : device.modelSheetId;
  const wantedSheet = await reader.modelSheet(modelSheetId);
  if (field === 'serial' || field === 'modelSheet') {
    const codes = boundCodes(device.otherCodes, yearOf(amending.occasion.at), 'correction.now');
    if (isRefusal(codes)) return codes;
    for (const code of codes) {
      const fault = contradiction(code, serial, wantedSheet, 'correction.now');
      if (fault !== undefined) return fault;
    }
  }
  const twins = serial === '' ? [] : await reader.devicesBySerial(serial, modelSheetId);
  const signedBy = device.lastInspection?.by;
  return decideAmendDevice(
    wanted,
    {
      device,
      modelSheet: row.modelSheet,
      program: await programIn(reader, rules),
      sameSerial: twins.find((twin) => twin !== benchId),
      wantedSheet,
      wantedUser: field === 'regularUser' && now !== undefined ? await reader.person(now) : undefined,
      signer: signedBy === undefined ? undefined : await reader.person(signedBy),
    },
    amending,
  );
};
