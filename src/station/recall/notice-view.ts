/** What the screens are shown of a manufacturer's notice: what it says, and the devices that it means, those out first. */
import { z } from 'zod';
import { calendarDateSchema } from '../../domain/brand.ts';
import { isHeldFor } from '../../domain/decide/notice.ts';
import type { Language } from '../../domain/message.ts';
import { matchLevelSchema } from '../../domain/recall/match-level.ts';
import { type Notice, type NoticeText, noticeTextSchema } from '../../domain/recall/notice.ts';
import { oddIn } from '../../domain/recall/odd-notice.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { deviceSummary, deviceSummarySchema, namesOf } from '../views.ts';
import { type MatchedRow, matchesAmongUnrecognised, matchesInRegister } from './match-register.ts';
import { becauseOf, warningText } from './notice-words.ts';

/** As many as a screen names; the counts are of all. */
const mostNamed = 500;

export const matchedDeviceSchema = z.object({
  device: deviceSummarySchema,
  dateOfManufacture: z.string(),
  level: matchLevelSchema,
  /** Why, in the language of the person. */
  because: z.string(),
  /** Only two people's word says which device it is. */
  presumed: z.boolean(),
  /** Held for this notice; a scrapped device never is. */
  held: z.boolean(),
  /** The name of whoever has it. */
  user: z.string().optional(),
});

export const noticeMatchesSchema = z.object({
  certain: z.int(),
  possible: z.int(),
  /** Out with somebody. */
  out: z.int(),
  /** Those out first, then the certain before the possible; at most 500. */
  devices: z.array(matchedDeviceSchema),
  /** Devices that nobody has recognised, and that may be meant. */
  unrecognised: z.array(z.object({ identityCase: z.int(), keptAt: z.string(), because: z.string() })),
  /** What is odd about the notice, in sentences. */
  warnings: z.array(z.string()),
});
export type NoticeMatches = z.infer<typeof noticeMatchesSchema>;

export interface ViewOptions {
  readonly today: MatchedRow['device']['registeredOn'];
  readonly dueSoonDays: number;
  readonly language: Language;
  /** Absent while the notice is not recorded. */
  readonly notice?: number | undefined;
}

export const noticeMatches = async (
  reader: LedgerReader,
  text: NoticeText,
  { today, dueSoonDays, language, notice }: ViewOptions,
): Promise<NoticeMatches> => {
  const matched: MatchedRow[] = [];
  for await (const page of matchesInRegister(reader, text)) matched.push(...page.matched);
  const unrecognised = await matchesAmongUnrecognised(reader, text);
  const name = await namesOf(reader);
  const inOrder = matched.toSorted((one, other) => urgency(one) - urgency(other));
  return {
    certain: matched.filter(({ match }) => match.level === 'certain').length,
    possible: matched.filter(({ match }) => match.level === 'possible').length,
    out: matched.filter(({ device }) => device.custody !== undefined).length,
    devices: inOrder.slice(0, mostNamed).map((row) => ({
      device: deviceSummary(row, today, dueSoonDays),
      dateOfManufacture: row.device.dateOfManufacture,
      level: row.match.level,
      because: becauseOf(row.match, language),
      presumed: row.device.presumedIdentity !== undefined,
      held: notice !== undefined && isHeldFor(row.device, notice),
      ...(row.device.custody === undefined ? {} : { user: name(row.device.custody.userId) }),
    })),
    unrecognised: unrecognised.map(({ identity, match }) => ({
      identityCase: identity.identityCase,
      keptAt: identity.keptAt,
      because: becauseOf(match, language),
    })),
    warnings: await warningsOf(reader, text, language),
  };
};

const urgency = ({ device, match }: MatchedRow): number =>
  (device.custody === undefined ? 2 : 0) + (match.level === 'certain' ? 0 : 1);

const warningsOf = async (reader: LedgerReader, text: NoticeText, language: Language): Promise<string[]> => {
  const sheets = await reader.modelSheets();
  const { isMakerUnknown, unknownModels, unclearSerials } = oddIn(text, sheets);
  const makers = [...new Set(sheets.map(({ manufacturer }) => manufacturer))].join(', ');
  const { manufacturer } = text;
  return [
    ...(isMakerUnknown ? [warningText({ key: 'maker-unknown', manufacturer, makers }, language)] : []),
    ...unknownModels.map((model) => warningText({ key: 'model-unknown', model }, language)),
    ...unclearSerials.map((serials) => warningText({ key: 'serials-unclear', serials }, language)),
  ];
};

export const noticeLineSchema = noticeTextSchema
  .pick({ manufacturer: true, reference: true, issuedOn: true, instruction: true, affected: true })
  .extend({
    notice: z.int(),
    recordedOn: calendarDateSchema,
    /** By name. */
    recordedBy: z.string(),
    /** What it meant when it was recorded. */
    certain: z.int(),
    possible: z.int(),
  });
export type NoticeLine = z.infer<typeof noticeLineSchema>;

export const noticeLine = (
  { matched, recordedBy, ...notice }: Notice,
  name: (personId: string) => string,
): NoticeLine => ({
  ...notice,
  recordedBy: name(recordedBy),
  certain: matched.filter(({ match }) => match.level === 'certain').length,
  possible: matched.filter(({ match }) => match.level === 'possible').length,
});
