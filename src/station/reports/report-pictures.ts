/** Pictures of the evidence as reports show them: small enough for paper, with what they show. */
import sharp from 'sharp';
import type { ReportPicture } from '../../reports/picture-strip.ts';
import type { ReportWords } from '../../reports/report-words.ts';
import type { RecordedPicture } from '../kept-pictures.ts';
import type { OperationContext } from '../operation.ts';

/** 63 mm wide on paper, that is more than 300 dots an inch. */
const mostSideDots = 800;

/** Those that are still what was kept; a picture that is missing or was changed is for `ledger verify` to name. */
export const reportPictures = async (
  { evidence }: OperationContext,
  pictures: readonly RecordedPicture[],
  words: ReportWords,
): Promise<readonly ReportPicture[]> => {
  const found: ReportPicture[] = [];
  for (const { event, on } of pictures) {
    const bytes = await evidence.get(event.sha256);
    if (typeof bytes === 'string') continue;
    const { data, info } = await sharp(bytes)
      .resize({ width: mostSideDots, height: mostSideDots, fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 80 })
      .toBuffer({ resolveWithObject: true });
    found.push({
      jpeg: data,
      width: info.width,
      height: info.height,
      caption: words.tell('pictureCaption', {
        what: words.message(`pictureOf-${event.of}`),
        on: words.date(on),
      }),
    });
  }
  return found;
};
