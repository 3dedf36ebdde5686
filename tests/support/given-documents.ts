/** Documents as a screen gives them: a PDF of one page, and a small picture. */
import { PDFDocument } from 'pdf-lib';
import sharp from 'sharp';

export const pdfDocument = async (name = 'certificate.pdf') => {
  const made = await PDFDocument.create();
  made.addPage();
  return { name, contentBase64: Buffer.from(await made.save()).toString('base64') };
};

export const photoDocument = async (name = 'cut.jpg') => {
  const made = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#888' } })
    .jpeg()
    .toBuffer();
  return { name, contentBase64: made.toString('base64') };
};
