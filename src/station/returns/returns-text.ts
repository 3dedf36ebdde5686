/** The words of return plans in both languages, with money, months, lengths and devices as people read them. */
import english from '../../../assets/messages/en/returns.json' with { type: 'json' };
import spanish from '../../../assets/messages/es/returns.json' with { type: 'json' };
import type { CalendarDate } from '../../domain/brand.ts';
import { addMonths } from '../../domain/calendar.ts';
import { type LengthUnit, lengthText } from '../../domain/length.ts';
import type { Language } from '../../domain/message.ts';
import { catalogueOf, type Values } from '../catalogue.ts';

export type ReturnsKey = keyof typeof english;

const catalogue = catalogueOf({ en: english, es: spanish });

export interface ReturnsPlace {
  readonly language: Language;
  /** The first month of the plan. */
  readonly from: CalendarDate;
  /** Of every price; empty where nobody has said which. */
  readonly currency: string;
  readonly unit: LengthUnit;
}

export class ReturnsText {
  readonly #place: ReturnsPlace;

  constructor(place: ReturnsPlace) {
    this.#place = place;
  }

  said(key: ReturnsKey, values?: Values): string {
    return catalogue(key, this.#place.language, values);
  }

  money(amount: number): string {
    const digits = new Intl.NumberFormat(this.#locale, {
      minimumFractionDigits: 2,
      maximumFractionDigits: 2,
    });
    return `${digits.format(amount)} ${this.#place.currency}`.trim();
  }

  /** `from` is 0. */
  month(month: number): string {
    const text = new Intl.DateTimeFormat(this.#locale, { month: 'long', year: 'numeric', timeZone: 'UTC' });
    return text.format(new Date(`${this.firstDay(month)}T00:00:00Z`));
  }

  /** At the head of a sentence. */
  monthFirst(month: number): string {
    const text = this.month(month);
    return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
  }

  firstDay(month: number): string {
    return `${addMonths(this.#place.from, month).slice(0, 7)}-01`;
  }

  date(date: string): string {
    const text = new Intl.DateTimeFormat(this.#locale, { dateStyle: 'long', timeZone: 'UTC' });
    return text.format(new Date(`${date}T00:00:00Z`));
  }

  length(lengthM: number): string {
    return lengthText(lengthM, this.#place.unit, this.#place.language);
  }

  get #locale(): string {
    return this.#place.language === 'es' ? 'es-ES' : 'en-GB';
  }
}
