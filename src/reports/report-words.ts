/** The words of reports in one language or in both, with dates and lengths as people read them. */
import en from '../../assets/messages/en/reports.json' with { type: 'json' };
import es from '../../assets/messages/es/reports.json' with { type: 'json' };
import { type LengthUnit, lengthText } from '../domain/length.ts';
import { fillMessage, type Language, type Message } from '../domain/message.ts';

export type ReportWord = keyof typeof en;
/** What a report says, once in each of its languages, without repeating words that are alike. */
export type Told = readonly string[];
export type WordValues = Readonly<Record<string, string | number | Message>>;

const catalogue: Record<Language, Record<ReportWord, string>> = { en, es };
const locales: Record<Language, string> = { en: 'en-GB', es: 'es-ES' };

export const isReportWord = (key: string): key is ReportWord => key in en;

export class ReportWords {
  readonly languages: readonly Language[];
  readonly #unit: LengthUnit;

  /** At least one language; the first leads. */
  constructor(languages: readonly Language[], unit: LengthUnit) {
    this.languages = languages;
    this.#unit = unit;
  }

  /** Words that differ in letter case alone, such as `25 Nov 2026`, are said once. */
  told(message: Message): Told {
    const said = this.languages.map((language) => message[language]);
    return said.filter(
      (text, index) => said.findIndex((each) => each.toLowerCase() === text.toLowerCase()) === index,
    );
  }

  inLine(message: Message): string {
    return this.told(message).join(' / ');
  }

  message(key: ReportWord, values: WordValues = {}): Message {
    const filled = (language: Language): Record<string, string> =>
      Object.fromEntries(
        Object.entries(values).map(([name, value]) => [
          name,
          typeof value === 'object' ? value[language] : String(value),
        ]),
      );
    const { [key]: english } = catalogue.en;
    const { [key]: spanish } = catalogue.es;
    return fillMessage({ en: english, es: spanish }, { en: filled('en'), es: filled('es') });
  }

  tell(key: ReportWord, values: WordValues = {}): Told {
    return this.told(this.message(key, values));
  }

  /** In one line: `Findings / Hallazgos`. */
  line(key: ReportWord, values: WordValues = {}): string {
    return this.tell(key, values).join(' / ');
  }

  /** `24 Nov 2026`: the month in letters, so that nobody takes it for the day; a year or a month as far as it goes. */
  date(date: string): Message {
    const [year = '', month, day] = date.slice(0, 10).split('-');
    const isDate = /^\d{4}(-\d\d){0,2}$/.test(date.slice(0, 10));
    const inLanguage = (language: Language): string => {
      if (!isDate || month === undefined) return date;
      const name = new Intl.DateTimeFormat(locales[language], { month: 'short', timeZone: 'UTC' })
        .format(new Date(Date.UTC(2000, Number(month) - 1, 1)))
        .slice(0, 3);
      return day === undefined ? `${name} ${year}` : `${Number(day)} ${name} ${year}`;
    };
    return { en: inLanguage('en'), es: inLanguage('es') };
  }

  /** In one line, in each language where the two differ: `3 Dec 2026 / 3 dic 2026`. */
  dateLine(date: string): string {
    return this.inLine(this.date(date));
  }

  length(lengthM: number): Message {
    return { en: lengthText(lengthM, this.#unit, 'en'), es: lengthText(lengthM, this.#unit, 'es') };
  }

  /** With the decimal mark of each language. */
  number(value: number): Message {
    return { en: String(value), es: String(value).replace('.', ',') };
  }
}
