/** Pictures of the evidence as reports show them: small enough for paper, with what they show. */
import sharp from 'sharp';
import type { Message } from '../../domain/message.ts';
import type { EvidenceStore } from '../../ledger/evidence-store.ts';
import type { ReportPicture } from '../../reports/picture-strip.ts';
import type { ReportWords } from '../../reports/report-words.ts';

export interface PictureToShow {
  readonly sha256: string;
  readonly on: string;
  readonly what: Message;
}

/** 56 mm wide on paper, that is more than 300 dots an inch. */
const mostSideDots = 800;

/** Those that are still what was kept, and how many are missing or were changed. */
export const reportPictures = async (
  evidence: EvidenceStore,
  pictures: readonly PictureToShow[],
  words: ReportWords,
): Promise<{ readonly pictures: readonly ReportPicture[]; readonly lost: number }> => {
  const found: ReportPicture[] = [];
  for (const { sha256, on, what } of pictures) {
    const bytes = await evidence.get(sha256);
    if (typeof bytes === 'string') continue;
    const { data, info } = await sharp(bytes)
      .resize({ width: mostSideDots, height: mostSideDots, fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 80 })
      .toBuffer({ resolveWithObject: true });
    const caption = words.tell('pictureCaption', { what, on: words.date(on) });
    found.push({ jpeg: data, width: info.width, height: info.height, caption });
  }
  return { pictures: found, lost: pictures.length - found.length };
};
