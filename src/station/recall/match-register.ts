/** The whole register held against a manufacturer's notice, and the devices that lie somewhere under no name. */
import type { BenchId } from '../../domain/brand.ts';
import type { Device } from '../../domain/device.ts';
import type { IdentityCase } from '../../domain/identity/identity-case.ts';
import type { Observation } from '../../domain/identity/observation.ts';
import type { ModelSheet } from '../../domain/model-sheet.ts';
import { matchNotice } from '../../domain/recall/match-notice.ts';
import type { NoticeText } from '../../domain/recall/notice.ts';
import type { RecallMatch } from '../../domain/recall/recall-match.ts';
import { seenIn, subjectOf } from '../../domain/recall/recall-subject.ts';
import type { DeviceRow, LedgerReader } from '../../ledger/ledger.ts';

export interface MatchedRow extends DeviceRow {
  readonly match: RecallMatch;
}

export interface MatchedCase {
  readonly identity: IdentityCase;
  readonly match: RecallMatch;
}

/** Devices that are read at a time: between them others get their turn. */
const devicesAtOnce = 500;

export interface MatchedPage {
  readonly matched: readonly MatchedRow[];
  /** How many devices were held against the notice. */
  readonly devices: number;
}

/** All devices that a notice means, certainly or possibly, in the order of the bench IDs, page by page. */
export async function* matchesInRegister(
  reader: LedgerReader,
  text: NoticeText,
): AsyncGenerator<MatchedPage> {
  let after: BenchId | undefined;
  for (;;) {
    const rows = await reader.devicesAfter(after, devicesAtOnce);
    const matched: MatchedRow[] = [];
    for (const row of rows) {
      const match = await matchOfDevice(reader, text, row.device, row.modelSheet);
      if (match.level !== 'no') matched.push({ ...row, match });
    }
    yield { matched, devices: rows.length };
    after = rows.at(-1)?.device.benchId;
    if (rows.length < devicesAtOnce) return;
  }
}

export const matchOfDevice = async (
  reader: LedgerReader,
  text: NoticeText,
  device: Device,
  modelSheet: ModelSheet,
): Promise<RecallMatch> =>
  matchNotice(text, subjectOf(device, modelSheet, await observationOf(reader, device)));

/** What was seen on a device whose identity is presumed. */
const observationOf = async (
  reader: LedgerReader,
  { presumedIdentity }: Device,
): Promise<Observation | undefined> =>
  presumedIdentity === undefined
    ? undefined
    : (await reader.identityCase(presumedIdentity.identityCase))?.observation;

/** Devices that nobody has recognised: they are in no register, and lie where their case says. */
export const matchesAmongUnrecognised = async (
  reader: LedgerReader,
  text: NoticeText,
): Promise<readonly MatchedCase[]> => {
  const cases = await reader.unrecognisedCases();
  return cases
    .map((identity) => {
      const match = matchNotice(text, { asSeen: seenIn(identity.observation), serialNotRead: false });
      return { identity, match };
    })
    .filter(({ match }) => match.level !== 'no');
};
