/**
 * Pictures that are pasted or dropped anywhere in the window. Pasted text is not touched. The document is asked before the window,
 * which keeps out whatever was not taken (`navigation/drops.ts`).
 */
import { useEffect, useRef, useState } from 'react';
import { isWindowLocked } from '../lock/window-locked.ts';

/**
 * Told of every file that came, but for those that a part of the screen took for itself; returns whether files are being
 * dragged over the window.
 */
export const usePictureIntake = (onFiles: (files: readonly File[]) => void): boolean => {
  const latest = useRef(onFiles);
  useEffect(() => {
    latest.current = onFiles;
  });
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    const onPaste = (event: ClipboardEvent): void => {
      const pasted = event.clipboardData;
      if (
        isWindowLocked() ||
        pasted === null ||
        pasted.files.length === 0 ||
        pasted.types.includes('text/plain')
      )
        return;
      event.preventDefault();
      latest.current([...pasted.files]);
    };
    const onDrag = (event: DragEvent): void => {
      if (!carriesFiles(event)) return;
      if (event.defaultPrevented) {
        setOver(false);
        return;
      }
      event.preventDefault();
      if (event.dataTransfer !== null) event.dataTransfer.dropEffect = 'copy';
      setOver(true);
    };
    const onLeave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent): void => {
      setOver(false);
      if (event.defaultPrevented || !carriesFiles(event)) return;
      event.preventDefault();
      if (isWindowLocked()) return;
      latest.current([...(event.dataTransfer?.files ?? [])]);
    };
    window.addEventListener('paste', onPaste);
    document.addEventListener('dragover', onDrag);
    document.addEventListener('dragleave', onLeave);
    document.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('paste', onPaste);
      document.removeEventListener('dragover', onDrag);
      document.removeEventListener('dragleave', onLeave);
      document.removeEventListener('drop', onDrop);
    };
  }, []);
  return isOver;
};

const carriesFiles = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes('Files') === true;
