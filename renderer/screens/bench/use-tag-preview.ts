/** The picture of a tag on the stock of its printer, or on its usual stock where no printer is chosen or the stock is too small. */
import type { BenchId } from '../../../src/domain/brand.ts';
import type { TagKind } from '../../../src/domain/tag-content.ts';
import type { CallError, InputOf, OutputOf } from '../../../src/station/contract.ts';
import { useStationQuery } from '../../station/hooks.ts';
import type { PrinterView } from './print-ways.ts';

export interface TagPreview {
  readonly preview: OutputOf<'tag.preview'> | undefined;
  /** Why the device has no such tag. */
  readonly error: CallError | undefined;
  /** Why this tag cannot be printed on the stock of that printer. */
  readonly misfit: CallError | undefined;
}

/** What decides how a tag looks on a printer, besides its size and its dots. */
export const loadedIn = (printer: PrinterView | undefined): Pick<InputOf<'tag.preview'>, 'face' | 'ink'> =>
  printer === undefined ? {} : { face: printer.face, ink: printer.settings.colour };

export const useTagPreview = (
  benchId: BenchId,
  kind: TagKind,
  printer: PrinterView | undefined,
): TagPreview => {
  const usual = useStationQuery('tag.preview', { benchId, kind });
  const fitted = useStationQuery(
    'tag.preview',
    {
      benchId,
      kind,
      ...(printer === undefined ? {} : { dpi: printer.settings.dpi, stock: printer.settings.stock }),
      ...loadedIn(printer),
    },
    { enabled: printer !== undefined },
  );
  return {
    preview: (printer === undefined ? undefined : fitted.data) ?? usual.data,
    error: usual.error,
    misfit: printer === undefined ? undefined : fitted.error,
  };
};
