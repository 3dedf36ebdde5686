/** What only a page knows of itself: whether it may use a camera, how many there are, and whether its decoders start. */

import type { Finding } from '../../../src/domain/health/finding.ts';
import { type CameraLook, judgeCamera } from '../../../src/domain/health/judge-devices.ts';
import { PictureReader } from '../../camera/picture-reader.ts';

/** Decoders that start at all have answered for an empty picture by then. */
const decodersMs = 15_000;

export const lookAtPage = async (): Promise<readonly Finding[]> => {
  const [permission, cameras, doDecodersLoad] = await Promise.all([
    cameraPermission(),
    camerasConnected(),
    decodersLoad(),
  ]);
  return judgeCamera({ permission, cameras, doDecodersLoad });
};

const cameraPermission = async (): Promise<CameraLook['permission']> => {
  try {
    return (await navigator.permissions.query({ name: 'camera' })).state;
  } catch {
    return 'unknown';
  }
};

const camerasConnected = async (): Promise<number> => {
  try {
    const devices = await navigator.mediaDevices.enumerateDevices();
    return devices.filter(({ kind }) => kind === 'videoinput').length;
  } catch {
    return 0;
  }
};

/** An empty picture of our own is read through, and nothing is found in it. */
const decodersLoad = async (): Promise<boolean> => {
  const reader = new PictureReader();
  let timer: number | undefined;
  const late = new Promise<undefined>((resolve) => {
    timer = window.setTimeout(() => resolve(undefined), decodersMs);
  });
  try {
    const picture = await createImageBitmap(new ImageData(64, 64));
    const look = { budgetMs: 200, mostDots: 64, oursOnly: true };
    const answer = await Promise.race([reader.read(picture, look), late]);
    return answer?.kind === 'read';
  } catch {
    return false;
  } finally {
    window.clearTimeout(timer);
    reader.stop();
  }
};
