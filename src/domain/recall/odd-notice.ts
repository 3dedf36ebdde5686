/** What is odd about a notice by the register: a name that nobody has, or serial numbers without a pattern. */
import type { ModelSheet } from '../model-sheet.ts';
import { matchName } from './match-name.ts';
import type { NoticeText } from './notice.ts';
import { parseSerialSet } from './serial-range.ts';

export interface OddNotice {
  /** No model sheet is by this maker. */
  readonly isMakerUnknown: boolean;
  /** Models of the notice that no model sheet of this maker has. */
  readonly unknownModels: readonly string[];
  /** What cannot be compared, as it was written. */
  readonly unclearSerials: readonly string[];
}

export const oddIn = ({ manufacturer, affected }: NoticeText, sheets: readonly ModelSheet[]): OddNotice => {
  const ofMaker = sheets.filter((sheet) => matchName(sheet.manufacturer, manufacturer) !== 'no');
  const isKnown = (model: string): boolean =>
    ofMaker.some(
      (sheet) =>
        matchName(sheet.model, model) !== 'no' ||
        matchName(sheet.manufacturerReference ?? '', model) === 'certain',
    );
  const models = new Set(affected.flatMap((each) => each.models));
  const serials = new Set(affected.flatMap((each) => each.serials));
  return {
    isMakerUnknown: ofMaker.length === 0,
    unknownModels: ofMaker.length === 0 ? [] : [...models].filter((model) => !isKnown(model)),
    unclearSerials: [...serials].filter((written) => parseSerialSet(written).kind === 'unclear'),
  };
};
