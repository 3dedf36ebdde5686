/** A reader of pictures for as long as a dialog is open. */
import { useEffect, useState } from 'react';
import { PictureReader } from './picture-reader.ts';
import { registeredBenchIds } from './registered-ids.ts';

/** Knows the register soon after; stopped when the component goes. */
export const useReader = (): PictureReader | undefined => {
  const [reader, setReader] = useState<PictureReader>();
  useEffect(() => {
    const started = new PictureReader();
    let isOver = false;
    void (async () => {
      for await (const benchIds of registeredBenchIds()) {
        if (isOver) return;
        started.addRegistered(benchIds);
      }
    })();
    setReader(started);
    return () => {
      isOver = true;
      started.stop();
    };
  }, []);
  return reader;
};
