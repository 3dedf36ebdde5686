/** The screens of the camera and of pictures, and the way to each. Chromium's own fake camera plays in them. */
import sharp from 'sharp';
import { calendarDate } from '../../src/domain/brand.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import { renderTag } from '../../src/tags/render-tag.ts';
import { frameHeight, frameOf, frameWidth, worn } from './camera-recording.ts';
import { badges, devices } from './prepared-depot.ts';
import { card, go, heading, press, type Screen, signIn, type Visit } from './visit.ts';

/** A photograph of a worn status tag with this bench ID, half as large as a frame of the camera. */
const wornPhotograph = async (benchId: (typeof devices)['inService']): Promise<Buffer> => {
  const tag = await renderTag({
    kind: 'status',
    benchId,
    seal: { mark: 'H4RP', code: '9T4QK2MX' },
    tagNumber: 3,
    manufacturer: 'Norvane',
    model: 'Lode 2',
    serial: 'N2-18-1074',
    ratedLength: '2 m',
    station: 'Harrow Point depot',
    languages: ['en', 'es'],
    inspectedOn: calendarDate('2025-07-01'),
    dueOn: calendarDate('2026-07-01'),
    inspectorMark: 'W. Castellan',
  });
  if (isRefusal(tag)) throw new Error(tag.code);
  const pose = { widthDots: 1200, turned: 0, tilt: 0, blur: 4, right: 0, down: 0 };
  const frame = await frameOf(await worn(tag.png), pose);
  return sharp(frame, { raw: { width: frameWidth, height: frameHeight, channels: 1 } })
    .resize(frameWidth / 2)
    .jpeg()
    .toBuffer();
};

const openCamera = async (visit: Visit): Promise<void> => {
  await go(visit, '#/');
  await press(visit, 'camera:button');
  await heading(visit, 'camera:title').waitFor();
};

/** Opens a file in the camera panel. */
const give = async (visit: Visit, name: string, buffer: Buffer): Promise<void> => {
  await openCamera(visit);
  await visit.page.locator('input[type=file]').setInputFiles({ name, mimeType: 'image/png', buffer });
};

const plain = (width: number, height: number): Promise<Buffer> =>
  sharp({ create: { width, height, channels: 3, background: '#77776f' } })
    .png()
    .toBuffer();

export const screensOfCamera: readonly Screen[] = [
  {
    name: 'camera, live',
    show: async (visit) => {
      await openCamera(visit);
      return visit.page.getByText(visit.say('camera:state.looking'));
    },
  },
  {
    name: 'camera, nothing read for a while',
    show: async (visit) => visit.page.getByText(visit.say('camera:help.wipe')),
  },
  {
    name: 'a picture in which nothing is read',
    show: async (visit) => {
      await give(visit, 'bench.png', await plain(400, 300));
      return visit.page.getByText(visit.say('camera:still.none'));
    },
  },
  {
    name: 'a file that is no picture',
    show: async (visit) => {
      await give(visit, 'IMG_0042.HEIC', Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1'));
      return visit.page.getByRole('alert').getByText('IMG_0042.HEIC');
    },
  },
  {
    name: 'question about a worn tag',
    show: async (visit) => {
      await give(visit, 'worn.jpg', await wornPhotograph(devices.inService));
      return visit.page.getByText('N2-18-1074');
    },
  },
  {
    name: 'device card that offers to keep the picture in which it was read',
    show: async (visit) => {
      await press(visit, 'camera:worn.yes');
      return visit.page.getByText(visit.say('camera:pictures.fresh'));
    },
  },
  {
    name: 'picture to be kept',
    show: async (visit) => {
      await press(visit, 'camera:pictures.keepFresh');
      return visit.page.getByRole('img', { name: visit.say('camera:keep.preview') });
    },
  },
  {
    name: 'device card with a kept picture',
    show: async (visit) => {
      const keep = { name: visit.say('camera:keep.keep'), exact: true };
      await visit.page.getByRole('dialog').getByRole('button', keep).click();
      return visit.page.getByRole('button', { name: visit.say('evidence:pictures.open') }).first();
    },
  },
  {
    name: 'kept picture, large',
    show: async (visit) => {
      await visit.page
        .getByRole('button', { name: visit.say('evidence:pictures.open') })
        .first()
        .click();
      return visit.page.getByRole('dialog').getByRole('img');
    },
  },
  {
    name: 'picture to be taken',
    show: async (visit) => {
      await signIn(visit, badges.inspector);
      await (await card(visit, 'inService')).waitFor();
      await press(visit, 'camera:pictures.keep');
      return visit.page.getByRole('button', { name: visit.say('camera:keep.take') });
    },
  },
];
