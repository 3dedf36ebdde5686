/** A destination from its settings. */
import type { Destination } from './destination.ts';
import type { DestinationSettings } from './destination-settings.ts';
import { FolderDestination } from './folder/folder-destination.ts';
import { IppDestination } from './ipp/ipp-destination.ts';
import { openQueue } from './queue/open-queue.ts';
import { ThermalDestination } from './thermal/thermal-destination.ts';

/** Opens nothing yet: the printer is asked when it is checked or printed on. */
export const openDestination = (settings: DestinationSettings): Destination => {
  switch (settings.kind) {
    case 'folder':
      return new FolderDestination(settings);
    case 'queue':
      return openQueue(settings);
    case 'ipp':
      return new IppDestination(settings);
    case 'thermal':
      return new ThermalDestination(settings);
  }
};
