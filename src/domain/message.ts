/** A sentence in every language of the station, and the languages there are. */
import { z } from 'zod';

export const languages = ['en', 'es'] as const;
export const languageSchema = z.enum(languages);
export type Language = z.infer<typeof languageSchema>;

export const messageSchema = z.object({ en: z.string().min(1), es: z.string().min(1) });
export type Message = z.infer<typeof messageSchema>;

/** The message with `{name}` replaced by `values.name` in each language; an unknown name is left as it stands. */
export const fillMessage = (message: Message, values: Record<Language, Record<string, string>>): Message => ({
  en: fill(message.en, values.en),
  es: fill(message.es, values.es),
});

const fill = (template: string, values: Record<string, string>): string =>
  template.replace(/\{(\w+)\}/g, (whole, name: string) => values[name] ?? whole);
