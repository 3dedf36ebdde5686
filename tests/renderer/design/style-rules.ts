/** The style sheets of the page as rules: of which file, for which class, and what they declare. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { productFolder } from '../../../src/host/product-folder.ts';

export interface StyleRule {
  /** From the folder `renderer`. */
  readonly file: string;
  readonly selector: string;
  readonly declarations: ReadonlyMap<string, string>;
}

const folder = join(productFolder, 'renderer');

/** One selector each; what stands in `@media` or `@supports` is taken as if it always held. */
export const styleRules = (): readonly StyleRule[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.css'))
    .sort()
    .flatMap((name) => rulesIn(readFileSync(join(folder, name), 'utf8'), relative('.', name)));

export const rulesIn = (css: string, file: string): readonly StyleRule[] => {
  const text = css.replaceAll(/\/\*[\s\S]*?\*\//g, '');
  const rules: StyleRule[] = [];
  for (let at = 0; ; ) {
    const open = text.indexOf('{', at);
    if (open < 0) return rules;
    const prelude = text.slice(at, open).trim();
    const close = closingBrace(text, open);
    const body = text.slice(open + 1, close);
    if (/^@(?:media|supports)/.test(prelude)) rules.push(...rulesIn(body, file));
    else if (!prelude.startsWith('@'))
      for (const selector of prelude.split(/,(?![^(]*\))/))
        rules.push({ file, selector: selector.trim(), declarations: declarationsIn(body) });
    at = close + 1;
  }
};

const closingBrace = (text: string, open: number): number => {
  let depth = 0;
  for (let at = open; at < text.length; at += 1) {
    if (text[at] === '{') depth += 1;
    if (text[at] === '}') depth -= 1;
    if (depth === 0) return at;
  }
  throw new Error('A brace of the style sheet is not closed.');
};

const declarationsIn = (body: string): ReadonlyMap<string, string> =>
  new Map(
    body
      .split(';')
      .map((line) => line.split(/:(.*)/s))
      .filter((parts) => parts.length > 1)
      .map(([property = '', value = '']) => [property.trim(), value.replaceAll(/\s+/g, ' ').trim()]),
  );

/** The class that a selector is about: the last one named in it, without states; the element where there is none. */
export const subjectOf = (selector: string): string => {
  const last = selector.split(/[\s>+~]+(?![^[(]*[\])])/).at(-1) ?? selector;
  return /\.[\w-]+/.exec(last.replaceAll(/:not\([^)]*\)/g, ''))?.[0] ?? last.replace(/[:[].*/, '');
};

/** Names of the tokens that a value refers to. */
export const tokensIn = (value: string | undefined): readonly string[] =>
  [...(value ?? '').matchAll(/var\(--([\w-]+)/g)].map(([, name = '']) => name);
