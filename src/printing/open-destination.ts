/** A destination from its settings. What drives one kind of printer is loaded when such a printer is first used. */
import type { Destination } from './destination.ts';
import type { DestinationSettings } from './destination-settings.ts';

/** Opens nothing yet: the printer is asked when it is checked or printed on. */
export const openDestination = async (settings: DestinationSettings): Promise<Destination> => {
  switch (settings.kind) {
    case 'folder': {
      const { FolderDestination } = await import('./folder/folder-destination.ts');
      return new FolderDestination(settings);
    }
    case 'queue': {
      const { openQueue } = await import('./queue/open-queue.ts');
      return openQueue(settings);
    }
    case 'ipp': {
      const { IppDestination } = await import('./ipp/ipp-destination.ts');
      return new IppDestination(settings);
    }
    case 'thermal': {
      const { ThermalDestination } = await import('./thermal/thermal-destination.ts');
      return new ThermalDestination(settings);
    }
  }
};
