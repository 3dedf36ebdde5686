/** Which devices a manufacturer's notice speaks of: certain, possible or no, and why. */
import { allOf, anyOf, type MatchLevel } from './match-level.ts';
import { matchMade } from './match-made.ts';
import { matchName } from './match-name.ts';
import { matchSet, type SerialDoubt, type SerialMatch } from './match-serial.ts';
import type { Affected, NoticeText } from './notice.ts';
import type { MatchGround, RecallMatch } from './recall-match.ts';
import type { RecallSubject, SeenMarking } from './recall-subject.ts';
import { parseSerialSet, type SerialSet } from './serial-range.ts';
import { signsOf } from './signs.ts';

/** When in doubt a device is possibly meant: never a false no. */
export const matchNotice = (
  notice: NoticeText,
  { asRegistered, asSeen, serialNotRead }: RecallSubject,
): RecallMatch => {
  const registered = asRegistered && matchMarking(notice, asRegistered);
  if (asSeen === undefined) return withList(registered ?? unknown, serialNotRead);
  const seen = matchMarking(notice, asSeen);
  const all = registered === undefined ? [seen] : [registered, seen];
  const best = all.find(({ level }) => level === anyOf(all.map((match) => match.level))) ?? seen;
  if (best.level === 'no') return best;
  return { level: 'possible', grounds: ['presumed', ...best.grounds.filter((ground) => ground !== 'named')] };
};

const unknown: RecallMatch = { level: 'possible', grounds: ['presumed'] };

/** What only a list says was not read on the device. */
const withList = (match: RecallMatch, serialNotRead: boolean): RecallMatch =>
  match.level === 'certain' && serialNotRead ? { level: 'possible', grounds: ['serial-not-read'] } : match;

const matchMarking = (notice: NoticeText, seen: SeenMarking): RecallMatch => {
  const maker = matchName(seen.manufacturer, notice.manufacturer);
  if (maker === 'no') return { level: 'no', grounds: ['other-maker'] };
  const matches = notice.affected.map((affected) => matchAffected(affected, seen));
  const level = anyOf(matches.map((match) => match.level));
  const best = matches.find((match) => match.level === level) ?? unknown;
  if (level === 'no' || maker === 'certain') return best;
  return {
    level: 'possible',
    grounds: ['maker-in-doubt', ...best.grounds.filter((ground) => ground !== 'named')],
  };
};

interface Condition {
  readonly level: MatchLevel;
  readonly outside: MatchGround;
  readonly doubt: MatchGround;
}

const matchAffected = (affected: Affected, seen: SeenMarking): RecallMatch => {
  const model = modelIn(affected, seen);
  const made = madeIn(affected, seen);
  const excluded = [model, made].find((condition) => condition.level === 'no');
  if (excluded !== undefined) return { level: 'no', grounds: [excluded.outside] };
  const conditions = [model, serialIn(affected, seen), made];
  const level = allOf(conditions.map((condition) => condition.level));
  switch (level) {
    case 'certain':
      return { level, grounds: ['named'] };
    case 'possible':
      return {
        level,
        grounds: conditions.filter((condition) => condition.level === 'possible').map(({ doubt }) => doubt),
      };
    case 'no':
      return { level, grounds: ['serial-outside'] };
  }
};

const modelIn = ({ models }: Affected, { model, reference }: SeenMarking): Condition => {
  const names = reference === undefined ? [model] : [model, reference];
  const levels = models.flatMap((named) => names.map((each) => matchName(each, named)));
  return {
    level: models.length === 0 ? 'certain' : anyOf(levels),
    outside: 'other-model',
    doubt: 'model-in-doubt',
  };
};

const doubtOf: Record<SerialDoubt, MatchGround> = {
  'unclear set': 'serial-set-unclear',
  unreadable: 'serial-unreadable',
  'written otherwise': 'serial-written-otherwise',
};

/** What is written is understood once for all devices that it is held against. */
const understood = new WeakMap<Affected, readonly SerialSet[]>();

const setsOf = (affected: Affected): readonly SerialSet[] => {
  const sets = understood.get(affected) ?? affected.serials.map(parseSerialSet);
  understood.set(affected, sets);
  return sets;
};

/** Of several possible sets, the doubt about the device comes before that about the notice. */
const serialIn = (affected: Affected, { serial }: SeenMarking): Condition => {
  const { serials } = affected;
  const signs = signsOf(serial);
  const matches: SerialMatch[] = [];
  for (const set of setsOf(affected)) {
    const match = matchSet(signs, set);
    matches.push(match);
    if (match.level === 'certain') break;
  }
  const doubts = matches.flatMap(({ doubt }) => (doubt === undefined ? [] : [doubt]));
  const doubt = doubts.find((each) => each !== 'unclear set') ?? 'unclear set';
  return {
    level: serials.length === 0 ? 'certain' : anyOf(matches.map(({ level }) => level)),
    outside: 'serial-outside',
    doubt: doubtOf[doubt],
  };
};

const madeIn = ({ made }: Affected, seen: SeenMarking): Condition => ({
  level: made === undefined ? 'certain' : matchMade(seen.dateOfManufacture, made),
  outside: 'made-outside',
  doubt: 'made-in-doubt',
});
