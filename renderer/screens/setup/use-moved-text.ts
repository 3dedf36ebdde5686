/** An offset in words: how far and which way the print is moved. */
import { useText } from '../../i18n/text.ts';

interface Offset {
  readonly xMm: number;
  readonly yMm: number;
}

/** `undefined` where the print is not moved. */
export const useMovedText = (): ((offset: Offset) => string | undefined) => {
  const { t, language } = useText();
  const size = (mm: number): string => String(Math.abs(mm)).replace('.', language === 'es' ? ',' : '.');
  return ({ xMm, yMm }) => {
    const across = t(xMm < 0 ? 'screens:printers.moved.left' : 'screens:printers.moved.right', {
      mm: size(xMm),
    });
    const along = t(yMm < 0 ? 'screens:printers.moved.up' : 'screens:printers.moved.down', {
      mm: size(yMm),
    });
    if (xMm !== 0 && yMm !== 0) return t('screens:printers.moved.and', { across, along });
    if (xMm !== 0) return across;
    return yMm === 0 ? undefined : along;
  };
};
