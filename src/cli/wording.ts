/** Dates and lists as a person reads them in the terminal. */
import type { CalendarDate } from '../domain/brand.ts';
import type { Language } from '../domain/message.ts';

/** `24 Nov 2026`, `24 nov 2026`: no reader can take the day for the month. */
export const dateText = (date: CalendarDate, language: Language): string => {
  const [year, month, day] = date.split('-').map(Number);
  const at = new Date(Date.UTC(year ?? 0, (month ?? 1) - 1, day));
  const name = new Intl.DateTimeFormat(language === 'es' ? 'es-ES' : 'en-GB', {
    month: 'short',
    timeZone: 'UTC',
  });
  return `${day} ${name.format(at).slice(0, 3)} ${year}`;
};

/** Columns of equal width, two spaces apart. */
export const columns = (rows: readonly (readonly string[])[]): readonly string[] => {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd(),
  );
};
