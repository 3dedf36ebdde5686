/** The lines of a quarantine tag that say what must happen before return: the evidence for its reasons, then what is asked always. */
import { eitherOf, numberRanges } from '../domain/listing.ts';
import type { Language, Message } from '../domain/message.ts';
import { hasNumberedReasons, type QuarantineTag } from '../domain/tag-content.ts';
import { word } from './words.ts';

export const linesBeforeReturn = (tag: QuarantineTag): readonly Message[] => {
  const isNumbered = hasNumberedReasons(tag);
  return [...tag.evidence.map((piece) => evidenceLine(piece, isNumbered)), ...tag.beforeReturn];
};

const evidenceLine = (
  { reasons, anyOf }: QuarantineTag['evidence'][number],
  isNumbered: boolean,
): Message => {
  const forThem = word(reasons.length === 1 ? 'forReason' : 'forReasons');
  const inOne = (language: Language): string => {
    const either = eitherOf(
      anyOf.map((message) => message[language]),
      word('or')[language],
    );
    return isNumbered ? `${forThem[language]} ${numberRanges(reasons)}: ${either}` : either;
  };
  return { en: inOne('en'), es: inOne('es') };
};
