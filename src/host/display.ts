/** Whether a window can be shown from here at all, and how. */
import { access } from 'node:fs/promises';

/** On Linux a window needs an X11 or a Wayland display; the other systems have theirs always. */
export const hasDisplay = (platform: NodeJS.Platform, environment: NodeJS.ProcessEnv): boolean =>
  platform !== 'linux' || Boolean(environment.DISPLAY) || Boolean(environment.WAYLAND_DISPLAY);

/** Chromium refuses to run its sandbox as root, which on Linux means a container. */
export const isRootOnLinux = (): boolean => process.platform === 'linux' && process.getuid?.() === 0;

/**
 * False on Linux without a device of the Direct Rendering Manager (`/dev/dri`, docs.kernel.org): a browser would spend a tenth of
 * its start on imitating one.
 */
export const hasGraphicsDevice = async (): Promise<boolean> =>
  process.platform !== 'linux' ||
  access('/dev/dri').then(
    () => true,
    () => false,
  );
