/** A queue of whatever operating system this is. */
import type { Destination } from '../destination.ts';
import type { QueueSettings } from '../destination-settings.ts';
import { CupsDestination } from './cups-destination.ts';
import { WindowsDestination } from './windows-destination.ts';

export const openQueue = (
  settings: QueueSettings,
  platform: NodeJS.Platform = process.platform,
): Destination => (platform === 'win32' ? new WindowsDestination(settings) : new CupsDestination(settings));
