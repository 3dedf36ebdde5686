/** The end of a report about the record: which state of it the report is made from, how to prove it, and what the program does not do. */
import { heading, leadingOn, whole } from './prose.ts';
import type { ReportWords } from './report-words.ts';
import type { Strip } from './strip.ts';
import { symbolStrip } from './symbol-strip.ts';
import { facts } from './table.ts';
import { textStyles } from './type-sizes.ts';

export interface RecordProof {
  /** The RFC 6962 tree over all events when the report was made. */
  readonly head: { readonly size: number; readonly rootHash: string };
  /** The event that the report is about. */
  readonly seq?: number | undefined;
  /** The latest signed checkpoint of the station, as a signed note. */
  readonly checkpoint?: string | undefined;
  /** The proof that the event is in the record, as text that can be checked without this program. */
  readonly proof?: string | undefined;
}

export const recordStrips = (
  { head, seq, checkpoint, proof }: RecordProof,
  words: ReportWords,
  widthMm: number,
): readonly Strip[] => {
  const symbol =
    proof === undefined ? undefined : symbolStrip(proof, words.tell('proofText', { seq: seq ?? 0 }), widthMm);
  return [
    heading(words.line('record'), widthMm),
    leadingOn(
      facts(
        [
          ...(seq === undefined ? [] : [[words.line('event'), String(seq)] as const]),
          [words.line('recordSize'), String(head.size)],
          [words.line('rootHash'), head.rootHash],
          ...(checkpoint === undefined ? [] : [[words.line('checkpoint'), checkpoint.trim()] as const]),
        ],
        widthMm,
      ),
    ),
    ...(symbol === undefined ? [] : [heading(words.line('proof'), widthMm, textStyles.subheading), symbol]),
    heading(words.line('whatItIs'), widthMm, textStyles.subheading),
    whole(words.tell('caution'), widthMm),
  ];
};
