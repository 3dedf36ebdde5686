/** A manufacturer's notice as it is being entered: texts in fields, several lines in some of them. */
import type { InputOf, OutputOf } from '../../../src/station/contract.ts';

export interface GroupDraft {
  /** Tells the groups of a draft from one another. */
  readonly key: number;
  /** One in each line. */
  readonly models: string;
  readonly serials: string;
  /** A year, a month or a day. */
  readonly madeFrom: string;
  readonly madeUntil: string;
}

export interface NoticeDraft {
  readonly manufacturer: string;
  readonly reference: string;
  readonly issuedOn: string;
  readonly instructionEn: string;
  readonly instructionEs: string;
  readonly groups: readonly GroupDraft[];
}

export const emptyGroup = (key: number): GroupDraft => ({
  key,
  models: '',
  serials: '',
  madeFrom: '',
  madeUntil: '',
});

export const nextKey = (groups: readonly GroupDraft[]): number =>
  Math.max(0, ...groups.map(({ key }) => key)) + 1;

export const emptyNotice: NoticeDraft = {
  manufacturer: '',
  reference: '',
  issuedOn: '',
  instructionEn: '',
  instructionEs: '',
  groups: [emptyGroup(1)],
};

type Text = InputOf<'notice.record'>['text'];

export type NoticeFault = 'manufacturer' | 'reference' | 'issuedOn' | 'instruction' | 'made';

/** What must be put right before it can be held against the register. */
export const faultsOfNotice = (draft: NoticeDraft): ReadonlySet<NoticeFault> => {
  const faults = new Set<NoticeFault>();
  if (draft.manufacturer.trim() === '') faults.add('manufacturer');
  if (draft.reference.trim() === '') faults.add('reference');
  if (draft.issuedOn === '') faults.add('issuedOn');
  if (draft.instructionEn.trim() === '' && draft.instructionEs.trim() === '') faults.add('instruction');
  if (draft.groups.some(isMadeWrong)) faults.add('made');
  return faults;
};

/** Whether a date of manufacture of the group is neither a year, a month nor a day. */
export const isMadeWrong = ({ madeFrom, madeUntil }: GroupDraft): boolean =>
  [madeFrom.trim(), madeUntil.trim()].some(
    (date) => date !== '' && !/^(?:19|20)\d\d(?:-\d\d(?:-\d\d)?)?$/.test(date),
  );

export const textOf = (draft: NoticeDraft): Text => ({
  manufacturer: draft.manufacturer.trim(),
  reference: draft.reference.trim(),
  issuedOn: draft.issuedOn as Text['issuedOn'],
  instruction: { ...given('en', draft.instructionEn), ...given('es', draft.instructionEs) },
  affected: draft.groups.map(({ models, serials, madeFrom, madeUntil }) => ({
    models: linesOf(models),
    serials: linesOf(serials),
    ...(madeFrom.trim() + madeUntil.trim() === ''
      ? {}
      : { made: { ...given('from', madeFrom), ...given('until', madeUntil) } }),
  })),
});

const given = <Key extends string>(key: Key, text: string): Partial<Record<Key, string>> =>
  text.trim() === '' ? {} : ({ [key]: text.trim() } as Record<Key, string>);

const linesOf = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

/** What a file said, to be looked over. */
export const draftOf = ({
  manufacturer,
  reference,
  issuedOn,
  instruction,
  affected,
}: OutputOf<'notice.read'>['text']): NoticeDraft => ({
  manufacturer,
  reference,
  issuedOn,
  instructionEn: instruction.en ?? '',
  instructionEs: instruction.es ?? '',
  groups: affected.map(({ models, serials, made }, index) => ({
    key: index + 1,
    models: models.join('\n'),
    serials: serials.join('\n'),
    madeFrom: made?.from ?? '',
    madeUntil: made?.until ?? '',
  })),
});
